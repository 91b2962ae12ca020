// The form of a run: rows by keyboard, blocks pasted into the grid, and what the server says beside each field while typing.
// Without this script rows are typed and pasted into their text field, and "Show drawing" sends the form.
(() => {
  const drawing = document.getElementById('run-drawing');
  const form = drawing?.closest('form');
  if (!form) return;
  const ROW = '.entries tbody tr';
  const CONTROL = 'input:not([type=hidden]), select';
  let pastedInto = null;
  /** The rows of a group as they stood before the last removal or paste: the browser's own undo does not know of those. */
  const before = new Map();

  form.classList.add('scripted');
  form.addEventListener('keydown', onKey);
  form.addEventListener('click', onClick);
  document.addEventListener('paste', onPaste);
  drawing.addEventListener('htmx:after:swap', onDrawn);
  drawing.addEventListener('htmx:after:request', onAnswer);
  drawing.addEventListener('htmx:error', () => sayAway());
  for (const note of form.querySelectorAll('[data-scripted]')) note.hidden = false;
  equipRows();

  function onKey(event) {
    const row = event.target.closest(ROW);
    if (!row || !event.target.matches(CONTROL) || event.isComposing || event.ctrlKey || event.metaKey) return;
    const isSelect = event.target.matches('select');
    if (event.altKey) {
      if (event.key === 'Insert') insertRow(row);
      else if (event.key === 'Delete') removeRow(row);
      else return;
    } else if (event.key === 'Enter') move(event.target, row, event.shiftKey ? -1 : 1, 'add');
    else if (event.key === 'ArrowDown' && !isSelect) move(event.target, row, 1);
    else if (event.key === 'ArrowUp' && !isSelect) move(event.target, row, -1);
    else return;
    event.preventDefault();
  }

  /** Up or down in the same column; Enter in the last row adds one. */
  function move(from, row, step, atEnd) {
    const column = controlsOf(row).indexOf(from);
    const rows = rowsOf(row);
    const next = rows[rows.indexOf(row) + step] ?? (atEnd && step > 0 ? addRow(row) : null);
    const control = next && controlsOf(next)[column];
    control?.focus();
    if (control?.matches('input')) control.select();
  }

  function addRow(of) {
    const rows = rowsOf(of);
    const count = rows.length;
    const row = rows[count - 1].cloneNode(true);
    for (const element of row.querySelectorAll('*')) {
      rename(element, 'name', /\[\d+\]/, `[${count}]`);
      rename(element, 'id', /-\d+--/, `-${count}--`);
      rename(element, 'aria-label', /\d+$/, String(count + 1));
    }
    row.querySelector('th > div').textContent = String(count + 1);
    for (const word of row.querySelectorAll('.fault, .beside')) word.remove();
    rows[count - 1].after(row);
    for (const control of controlsOf(row)) {
      clear(control);
      control.removeAttribute('aria-invalid');
      control.removeAttribute('aria-describedby');
    }
    return row;
  }

  function rename(element, attribute, pattern, text) {
    const value = element.getAttribute(attribute);
    if (value !== null) element.setAttribute(attribute, value.replace(pattern, text));
  }

  /** The texts move, the rows stay: names and numbers hold. */
  function removeRow(row) {
    keep(row.closest('[data-rows]'));
    const rows = rowsOf(row);
    const at = rows.indexOf(row);
    for (let i = at; i < rows.length - 1; i++) copy(rows[i + 1], rows[i]);
    controlsOf(rows[rows.length - 1]).forEach(clear);
    changed(row);
  }

  function insertRow(row) {
    addRow(row);
    const rows = rowsOf(row);
    const at = rows.indexOf(row);
    for (let i = rows.length - 1; i > at; i--) copy(rows[i - 1], rows[i]);
    controlsOf(row).forEach(clear);
    changed(row);
    controlsOf(row)[0].focus();
  }

  function copy(from, to) {
    const controls = controlsOf(to);
    controlsOf(from).forEach((control, column) => {
      controls[column].value = control.value;
    });
  }

  function clear(control) {
    if (control.matches('select')) control.selectedIndex = 0;
    else control.value = '';
  }

  function changed(row) {
    controlsOf(row)[0].dispatchEvent(new Event('input', { bubbles: true }));
  }

  function onClick(event) {
    const button = event.target.closest('button[data-row]');
    if (!button) return;
    const group = button.closest('[data-rows]');
    if (button.dataset.row === 'remove') removeRow(button.closest('tr'));
    else if (button.dataset.row === 'back') takeBack(group);
    else controlsOf(addRow(group.querySelector(ROW)))[0].focus();
  }

  function keep(group) {
    const texts = [...group.querySelectorAll(ROW)].map((row) => controlsOf(row).map((control) => control.value));
    before.set(group.id, texts);
    showBack(group);
  }

  function takeBack(group) {
    const texts = before.get(group.id) ?? [];
    before.delete(group.id);
    while (group.querySelectorAll(ROW).length < texts.length) addRow(group.querySelector(ROW));
    [...group.querySelectorAll(ROW)].forEach((row, at) => {
      controlsOf(row).forEach((control, column) => {
        if (texts[at] === undefined) clear(control);
        else control.value = texts[at][column];
      });
    });
    showBack(group);
    const first = group.querySelector(ROW);
    changed(first);
    controlsOf(first)[0].focus();
  }

  function showBack(group) {
    const shown = group.querySelector('button[data-row=back]');
    if (!before.has(group.id)) shown?.remove();
    else if (!shown) group.querySelector('button[data-row=add]').after(buttonOf('back', 'Take that back'));
  }

  /** A button in each row and one below them. Out of the way of Tab: the keys do the same. */
  function equipRows() {
    for (const group of form.querySelectorAll('[data-rows]')) {
      if (group.querySelector('button[data-row]')) continue;
      const noun = group.dataset.rows;
      group.querySelector('thead tr').append(document.createElement('td'));
      for (const row of group.querySelectorAll(ROW)) {
        const number = row.querySelector('th > div').textContent;
        const cell = document.createElement('td');
        cell.setAttribute('role', 'cell');
        cell.dataset.label = '';
        cell.append(buttonOf('remove', 'Remove', `Remove ${noun} ${number}`));
        row.append(cell);
      }
      const below = document.createElement('div');
      below.className = 'row';
      below.append(buttonOf('add', `Add a ${noun}`));
      group.querySelector('.entries').after(below);
      showBack(group);
    }
  }

  function buttonOf(what, word, label) {
    const button = document.createElement('button');
    button.type = 'button';
    button.className = 'button plain';
    button.dataset.row = what;
    button.textContent = word;
    if (what === 'remove') button.tabIndex = -1;
    if (label) button.setAttribute('aria-label', label);
    return button;
  }

  /** A block goes to the server, which reads it and sends the rows back; what it cannot read stays in the text field. */
  function onPaste(event) {
    const cell = document.activeElement;
    const group = cell?.closest(ROW) && cell.matches(CONTROL) ? cell.closest('[data-rows]') : null;
    const text = event.clipboardData?.getData('text/plain') ?? '';
    if (!group || !form.contains(group) || !/[\t\n]/.test(text.replace(/[\r\n]+$/, ''))) return;
    event.preventDefault();
    keep(group);
    group.querySelector('textarea').value = text;
    group.querySelector('input[type=hidden]').value = cell.name;
    pastedInto = cell.id;
    drawing.dispatchEvent(new CustomEvent('rows-pasted'));
  }

  function onDrawn() {
    equipRows();
    besideFields();
    const cell = pastedInto === null ? null : document.getElementById(pastedInto);
    pastedInto = null;
    if (cell && document.activeElement === document.body) cell.focus();
  }

  /** The field that is being typed in is not touched but for its marks. */
  function besideFields() {
    for (const word of form.querySelectorAll('.beside')) word.remove();
    for (const control of form.querySelectorAll('[aria-invalid]')) {
      control.removeAttribute('aria-invalid');
      document.getElementById(`${control.id}-fault`)?.remove();
      describe(control, false);
    }
    for (const item of drawing.querySelectorAll('[data-field]')) {
      const control = document.getElementById(item.dataset.field);
      if (!control || document.getElementById(`${control.id}-fault`)) continue;
      const isFault = item.classList.contains('fault');
      const word = document.createElement('div');
      word.className = isFault ? 'fault beside' : 'beside soft';
      word.id = `${control.id}-fault`;
      word.textContent = item.dataset.said;
      (control.closest('.entry') ?? control).after(word);
      describe(control, true);
      if (isFault) control.setAttribute('aria-invalid', 'true');
    }
  }

  function describe(control, isDescribed) {
    const id = `${control.id}-fault`;
    const ids = (control.getAttribute('aria-describedby') ?? '').split(' ').filter((one) => one !== '' && one !== id);
    if (isDescribed) ids.push(id);
    if (ids.length > 0) control.setAttribute('aria-describedby', ids.join(' '));
    else control.removeAttribute('aria-describedby');
  }

  function onAnswer(event) {
    const response = event.detail?.ctx?.response;
    if (response && (response.status >= 400 || response.raw?.redirected)) sayAway();
  }

  function sayAway() {
    const status = drawing.querySelector('[role=status]');
    if (status)
      status.textContent =
        'Not drawn anew: the server did not answer, or you are signed out. What is typed stays here; nothing is saved.';
  }

  function rowsOf(row) {
    return [...row.parentElement.children];
  }

  function controlsOf(row) {
    return [...row.querySelectorAll(CONTROL)];
  }
})();
