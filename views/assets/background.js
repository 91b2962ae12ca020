// The picture under a plan: a press, a tap or keys set its two points; the fields below stay the truth and work without this.
(() => {
  const pinned = document.getElementById('pinned');
  if (!pinned?.dataset.settable) return;
  const box = pinned.querySelector('.drawing');
  const picture = pinned.querySelector('svg');
  const status = pinned.querySelector('[role=status]');
  const form = document.querySelector('form[action$="/calibration"]');
  const { width, height } = picture.viewBox.baseVal;
  const LETTERS = ['A', 'B'];
  let zoom = 1;

  pinned.classList.add('scripted');
  for (const hidden of pinned.querySelectorAll('[data-scripted]')) hidden.hidden = false;
  picture.addEventListener('click', onPress);
  box.addEventListener('keydown', onKey);
  form.addEventListener('input', () => draw());
  form.addEventListener('change', showKnown);
  for (const button of pinned.querySelectorAll('[data-zoom]'))
    button.addEventListener('click', () => zoomBy(button.dataset.zoom === 'in' ? 2 : 0.5));
  window.addEventListener('resize', draw);
  showKnown();
  draw();

  function onPress(event) {
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(picture.getScreenCTM().inverse());
    const pin = chosen();
    set(pin, at.x, at.y);
    if (pin === 0 && !placeOf(1)) choose(1);
  }

  function onKey(event) {
    const steps = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
    const step = steps[event.key];
    if (event.target !== box || event.altKey || event.ctrlKey || event.metaKey) return;
    if (event.key === 'Enter') choose(1 - chosen());
    else if (step) {
      const by = event.shiftKey ? 20 : 1;
      const from = placeOf(chosen()) ?? middle();
      set(chosen(), from.x + by * step[0], from.y + by * step[1]);
      bringIntoSight(chosen());
    } else return;
    event.preventDefault();
  }

  /** The middle of what is in sight. */
  function middle() {
    const perPixel = width / picture.clientWidth;
    return {
      x: (box.scrollLeft + Math.min(box.clientWidth, picture.clientWidth) / 2) * perPixel,
      y: (box.scrollTop + Math.min(box.clientHeight, picture.clientHeight) / 2) * perPixel,
    };
  }

  function set(pin, x, y) {
    const [left, top] = [within(x, width), within(y, height)];
    field(pin, 'pixelX').value = left;
    field(pin, 'pixelY').value = top;
    draw();
    status.textContent = `Point ${LETTERS[pin]} is ${left} pixels from the left and ${top} from the top.`;
  }

  function within(value, most) {
    return String(Math.min(most, Math.max(0, Math.round(value))));
  }

  function field(pin, name) {
    return form.elements[`points[${pin}].${name}`];
  }

  function placeOf(pin) {
    const texts = [field(pin, 'pixelX').value.trim(), field(pin, 'pixelY').value.trim()];
    if (texts.some((text) => !/^\d+(\.\d+)?$/.test(text))) return null;
    return { x: Number(texts[0]), y: Number(texts[1]) };
  }

  function chosen() {
    return Number(pinned.querySelector('input[name=pin]:checked').value);
  }

  function choose(pin) {
    pinned.querySelector(`input[name=pin][value="${pin}"]`).checked = true;
    status.textContent = `A press sets point ${LETTERS[pin]} now.`;
  }

  /** Pins keep their size on the screen. */
  function draw() {
    const scale = width / Math.max(1, picture.clientWidth);
    for (const pin of [0, 1]) {
      const mark = picture.querySelector(`[data-pin="${pin}"]`);
      const place = placeOf(pin);
      mark.setAttribute('visibility', place ? 'visible' : 'hidden');
      if (place) mark.setAttribute('transform', `translate(${place.x} ${place.y}) scale(${scale})`);
    }
  }

  function bringIntoSight(pin) {
    const place = placeOf(pin);
    const scale = picture.clientWidth / width;
    const [x, y] = [place.x * scale, place.y * scale];
    const room = 30;
    if (x < box.scrollLeft + room) box.scrollLeft = x - room;
    if (x > box.scrollLeft + box.clientWidth - room) box.scrollLeft = x - box.clientWidth + room;
    if (y < box.scrollTop + room) box.scrollTop = y - room;
    if (y > box.scrollTop + box.clientHeight - room) box.scrollTop = y - box.clientHeight + room;
  }

  /** From the whole picture in sight up to twice its own size; what is in the middle stays there. */
  function zoomBy(factor) {
    const before = middle();
    const most = Math.max(1, (2 * width) / box.clientWidth);
    const least = Math.min(1, (0.78 * window.innerHeight) / ((box.clientWidth * height) / width));
    zoom = Math.min(most, Math.max(least, zoom * factor));
    picture.style.inlineSize = `${zoom * 100}%`;
    const scale = picture.clientWidth / width;
    box.scrollLeft = before.x * scale - box.clientWidth / 2;
    box.scrollTop = before.y * scale - box.clientHeight / 2;
    draw();
  }

  /** Only the fields of what was chosen are shown; both are sent, and the server reads one. */
  function showKnown() {
    const known = form.elements.known.value;
    for (const group of form.querySelectorAll('[data-known]')) group.hidden = group.dataset.known !== known;
  }
})();
