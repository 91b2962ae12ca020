// Keeps records of the floor that could not be sent for lack of signal, and sends them again when it is back.
// Only forms of class `keep` (without files) are looked after. Without this script they are posted as any form is.
(() => {
  const STORE = 'jobbook.unsent';
  const WAIT_MS = 20_000;
  const AGAIN_MS = 30_000;
  const NOT_NOW = [401, 408, 425, 429, 502, 503, 504];
  const viewer = metaOf('viewer');

  document.addEventListener('submit', onSubmit, true);
  window.addEventListener('online', sendAll);
  document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && sendAll());
  setInterval(sendAll, AGAIN_MS);
  refillRefused();
  show();
  void sendAll();

  async function onSubmit(event) {
    const form = event.target;
    if (!form.matches('form.keep') || form.enctype === 'multipart/form-data') return;
    event.preventDefault();
    event.stopImmediatePropagation();
    if (form.getAttribute('aria-busy') === 'true') return;
    form.setAttribute('aria-busy', 'true');
    const item = itemOf(form, event.submitter);
    const answer = await post(item);
    form.removeAttribute('aria-busy');
    const others = (items) => items.filter((kept) => kept.id !== form.dataset.kept && kept.id !== item.id);
    if (answer.came) {
      const lost = answer.status >= 400 && !answer.text.includes(`action="${item.action}"`);
      change((items) => (lost ? [...others(items), { ...item, refused: reasonIn(answer.text) }] : others(items)));
      take(answer);
    } else if (change((items) => [...others(items), item])) {
      const signIn = answer.status === 401 ? ' once you have signed in again' : ' when the signal is back';
      say(form, `Kept on this phone. It goes by itself${signIn}; nothing needs to be typed again.`);
    } else {
      say(form, 'No signal, and this phone keeps nothing. Stay here and press again when the signal is back.', 'stay');
    }
  }

  function itemOf(form, submitter) {
    const fields = [...new FormData(form, submitter)].filter(([, value]) => typeof value === 'string');
    return {
      id: new Map(fields).get('submissionId') ?? String(Date.now()),
      action: form.getAttribute('action') ?? location.pathname,
      page: location.pathname + location.search,
      label: form.dataset.keepLabel || document.title,
      typedAt: new Date().toISOString(),
      viewer,
      fields: fields.filter(([name]) => name !== '_csrf'),
    };
  }

  /** How long it was kept here, by this phone's clock alone, which may be wrong: the server's clock says when that was. */
  function bodyOf({ fields, typedAt }) {
    const body = new URLSearchParams(fields);
    const heldMs = Date.now() - Date.parse(typedAt);
    if (heldMs > WAIT_MS) body.set('heldMs', String(heldMs));
    return body;
  }

  /** The token is the one of the page that sends, not of the page where it was typed: the session may be another by now. */
  async function post(item) {
    try {
      const response = await fetch(item.action, {
        method: 'POST',
        body: bodyOf(item),
        headers: { 'x-csrf-token': metaOf('csrf-token'), accept: 'text/html' },
        signal: AbortSignal.timeout(WAIT_MS),
      });
      const text = await response.text();
      const { status, url } = response;
      return { came: !NOT_NOW.includes(status), status, url, text };
    } catch {
      return { came: false };
    }
  }

  /** Shows the page that came back, as the browser would have done. */
  function take(answer) {
    const page = new DOMParser().parseFromString(answer.text, 'text/html');
    const sheet = page.querySelector('main#sheet');
    if (!sheet || !page.body.classList.contains('field')) {
      location.assign(answer.url);
      return;
    }
    document.title = page.title;
    document.querySelector('main#sheet').replaceWith(sheet);
    document.querySelector('.title-block')?.replaceWith(page.querySelector('.title-block'));
    if (answer.url !== location.href) history.pushState(null, '', answer.url);
    window.htmx?.process(sheet);
    (sheet.querySelector('[role=alert]') ?? sheet).focus();
    scrollTo(0, 0);
  }

  async function sendAll() {
    const waiting = read().filter((item) => !item.refused && item.viewer === viewer);
    if (waiting.length === 0) return;
    if (!navigator.locks) await sendInTurn(waiting);
    else await navigator.locks.request(STORE, { ifAvailable: true }, (lock) => lock && sendInTurn(waiting));
  }

  /** In the order they were typed; the first that does not get through ends the try. */
  async function sendInTurn(waiting) {
    for (const { id } of waiting) {
      const item = read().find((kept) => kept.id === id);
      if (!item) continue;
      const answer = await post(item);
      if (!answer.came) return;
      const refused = answer.status < 400 ? undefined : reasonIn(answer.text);
      const isNext = refused === undefined && item.page === location.pathname + location.search && isIdle();
      change((items) =>
        refused === undefined
          ? items.filter((kept) => kept.id !== id)
          : items.map((kept) => (kept.id === id ? { ...kept, refused } : kept)),
      );
      if (isNext) take(answer);
    }
  }

  /** The page still says that its form is kept, and nobody has begun to fill in another: it may go on to what is next. */
  function isIdle() {
    const controls = [...document.querySelectorAll('main :is(input, textarea)')];
    const isTouched = (one) => one.value !== one.defaultValue || one.checked !== one.defaultChecked;
    return document.querySelector('main form.keep > [data-said]') !== null && !controls.some(isTouched);
  }

  function reasonIn(text) {
    const page = new DOMParser().parseFromString(text, 'text/html');
    const places = ['.faults ul', '.fillin .fault', '[role=alert]', 'main p', 'h1'];
    const said = places.map((place) => page.querySelector(place)?.textContent.trim()).find((words) => words);
    return said ?? 'The record did not take it.';
  }

  /** What was refused stands in its form again, so that it can be put right and not typed twice. */
  function refillRefused() {
    for (const form of document.querySelectorAll('form.keep')) {
      const item = read().find((kept) => kept.refused && kept.action === form.getAttribute('action'));
      if (!item) continue;
      form.dataset.kept = item.id;
      const typed = new Map(item.fields);
      for (const control of form.elements) {
        if (!control.name || control.type === 'hidden' || control.type === 'submit') continue;
        if (control.type === 'checkbox' || control.type === 'radio')
          control.checked = item.fields.some(([name, value]) => name === control.name && value === control.value);
        else if (typed.has(control.name)) control.value = typed.get(control.name);
      }
    }
  }

  function show() {
    const place = document.getElementById('unsent');
    if (!place) return;
    const items = read();
    place.hidden = items.length === 0;
    place.replaceChildren();
    if (items.length === 0) return;
    const count = items.length === 1 ? '1 record' : `${items.length} records`;
    const list = document.createElement('ul');
    list.append(...items.map(rowOf));
    const again = button('Try now', sendAll);
    place.append(element('strong', `${count} not sent yet`), list, again);
  }

  function rowOf(item) {
    const row = element('li', `${item.label}, typed ${new Date(item.typedAt).toLocaleString()}`);
    if (item.viewer !== viewer) row.append(`. ${item.viewer} typed it: sign in as ${item.viewer} to send it.`);
    if (!item.refused) return row;
    row.append(`. Refused: ${item.refused} `);
    const open = element('a', 'Put it right');
    open.href = item.page;
    const ask = document.createElement('details');
    ask.append(
      element('summary', 'Throw away'),
      button('Yes, throw away what was typed', () => change((items) => items.filter((kept) => kept.id !== item.id))),
    );
    row.append(open, ask);
    return row;
  }

  function say(form, text, then) {
    form.querySelector('[data-said]')?.remove();
    const words = element('p', text);
    words.dataset.said = '';
    words.setAttribute('role', 'status');
    if (then === 'stay') form.append(words);
    else form.replaceChildren(words);
  }

  function read() {
    try {
      return JSON.parse(localStorage.getItem(STORE) ?? '[]');
    } catch {
      return [];
    }
  }

  /** False when the phone would not keep it. */
  function change(how) {
    try {
      localStorage.setItem(STORE, JSON.stringify(how(read())));
      show();
      return true;
    } catch {
      return false;
    }
  }

  function element(name, text) {
    const made = document.createElement(name);
    made.textContent = text;
    return made;
  }

  function button(text, press) {
    const made = element('button', text);
    made.type = 'button';
    made.className = 'button';
    made.addEventListener('click', press);
    return made;
  }

  function metaOf(name) {
    return document.querySelector(`meta[name="${name}"]`)?.content ?? '';
  }
})();
