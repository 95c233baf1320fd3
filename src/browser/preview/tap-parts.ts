/** The small parts that the page to tap along is put together from. */
export function element(name: string, className = '', text = ''): HTMLElement {
  const made = document.createElement(name);
  if (className !== '') made.className = className;
  if (text !== '') made.textContent = text;
  return made;
}

export function button(text: string, className = ''): HTMLButtonElement {
  const made = element('button', className, text) as HTMLButtonElement;
  made.type = 'button';
  return made;
}

/** A labelled list to choose from: pairs of a value and its text. */
export function pick(text: string, choices: readonly (readonly [string, string])[]) {
  const label = document.createElement('label');
  const select = document.createElement('select');
  select.append(...choices.map(([value, shown]) => new Option(shown, value)));
  label.append(element('span', '', text), select);
  return { label, select };
}

/** A labelled input; the label of a tick stands after it. */
export function field(text: string, type: 'text' | 'checkbox') {
  const label = document.createElement('label');
  const input = document.createElement('input');
  input.type = type;
  const shown = element('span', '', text);
  label.append(...(type === 'checkbox' ? [input, shown] : [shown, input]));
  if (type === 'checkbox') label.className = 'tap-tick';
  return { label, input };
}
