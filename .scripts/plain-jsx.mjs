// Stands in for React where components are drawn once and never again: in the page's worker, which has neither a document
// nor 60 kB to spare. They become plain data (lib/planner/drawn.ts), never markup. Knows what the first screen is made of,
// and throws at the rest.
function drawnChildren(child) {
  if (child === undefined || child === null || typeof child === 'boolean') return [];
  if (Array.isArray(child)) return child.flatMap(drawnChildren);
  return [typeof child === 'object' ? child : String(child)];
}

const NAMES = { className: 'class', htmlFor: 'for' };
const kebab = (name) =>
  name.startsWith('--') ? name : name.replace(/[A-Z]/g, (sign) => `-${sign.toLowerCase()}`);

function drawnAttribute([name, value]) {
  // What is done on a press or a change is for later.
  if (name === 'children' || name.startsWith('on') || value === undefined || value === null) return [];
  if (name === 'ref' || name === 'dangerouslySetInnerHTML')
    throw new Error(`no ${name} in what is drawn apart`);
  if (name === 'style') {
    const rules = Object.entries(value).map(([rule, to]) => `${kebab(rule)}:${to}`);
    return [['style', rules.join(';')]];
  }
  if (typeof value === 'boolean' && !name.startsWith('aria-')) return value ? [[name, '']] : [];
  return [[NAMES[name] ?? name, String(value)]];
}

export const Fragment = ({ children }) => children;

export function jsx(type, props) {
  if (typeof type === 'function') return type(props);
  if (typeof type !== 'string') throw new Error('only elements and functions can be drawn apart');
  return {
    tag: type,
    attributes: Object.fromEntries(Object.entries(props).flatMap(drawnAttribute)),
    children: drawnChildren(props.children),
  };
}

export const jsxs = jsx;

export const useState = (first) => [typeof first === 'function' ? first() : first, () => undefined];
export const useRef = (current) => ({ current });
export const useCallback = (work) => work;
export const useMemo = (work) => work();
export const useEffect = () => undefined;
