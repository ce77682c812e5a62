// Loaded before anything else (`node --require`, which reaches every thread too): a clock that runs on as ever, CLOCK_SHIFT_MS milliseconds from the
// machine's own. So what is tested is what is shipped: the product knows nothing of another clock.
const shift = Number(process.env.CLOCK_SHIFT_MS ?? 0);
const MachineDate = globalThis.Date;
const now = () => MachineDate.now() + shift;

if (shift !== 0) {
  globalThis.Date = new Proxy(MachineDate, {
    construct: (date, given, asked) => Reflect.construct(date, given.length === 0 ? [now()] : given, asked),
    apply: () => new MachineDate(now()).toString(),
    get: (date, name) => (name === 'now' ? now : Reflect.get(date, name)),
  });
  MachineDate.prototype.constructor = globalThis.Date;
}
