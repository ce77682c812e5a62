import type { BoardAnswer, BoardMachineAnswer } from '@/lib/contract/board-answer';
import { clockFace, type HourStyle } from '@/lib/time/zone';

/** Sentences of a server carry the 24-hour clock; here it is written as the person reads it. */
export function onClock(text: string, hours: HourStyle): string {
  return hours === '24'
    ? text
    : text.replace(/\b([01]\d|2[0-3]):[0-5]\d\b/g, (time) => clockFace(time, hours));
}

/** What is sent to a phone, as JSON, with every clock time in it as its person reads it. */
export function payloadOnClock(payload: string, hours: HourStyle): string {
  if (hours === '24') return payload;
  // Written by this server, from a message's row.
  const message = JSON.parse(payload) as { readonly title: string; readonly body: string };
  const { title, body } = message;
  return JSON.stringify({ ...message, title: onClock(title, hours), body: onClock(body, hours) });
}

/** A board with every clock time in its sentences as the person reads it. */
export function boardOnClock(board: BoardAnswer, hours: HourStyle): BoardAnswer {
  if (hours === '24') return board;
  const write = (text: string) => onClock(text, hours);
  const { keeper, machines } = board;
  return {
    ...board,
    machines: machines.map((machine) => machineOnClock(machine, write)),
    keeper:
      keeper === null
        ? null
        : {
            ...keeper,
            told: keeper.told.map((told) => ({ ...told, title: write(told.title), body: write(told.body) })),
          },
  };
}

type Write = (text: string) => string;

function machineOnClock(machine: BoardMachineAnswer, write: Write): BoardMachineAnswer {
  const { problem, dangers, risk, job, question } = machine;
  return {
    ...machine,
    problem: problem === null ? null : write(problem),
    dangers: dangers.map(write),
    risk: write(risk),
    job:
      job === null
        ? null
        : {
            ...job,
            lead: write(job.lead),
            window: job.window === null ? null : write(job.window),
            lines: job.lines.map(write),
          },
    question:
      question === null
        ? null
        : {
            ask: write(question.ask),
            meaning: write(question.meaning),
            answers: question.answers.map((answer) => ({ ...answer, label: write(answer.label) })),
          },
  };
}
