// Dragging on the week's board: a set to another night or time, its end to other hours. This only measures, snaps and draws.
// Whether a set can stand where it hangs is asked of the desk, and the desk makes the change.

const trembles = { mouse: 5, finger: 12 }; // px a click, or a finger that rests, may move
const holdMs = 450; // a finger rests this long before it drags: a swipe scrolls
const edge = 32; // px from the board's side within which it scrolls on
const edgeStep = 10; // px a frame

export function attach(root, desk) {
  const ghost = root.querySelector('.drag-ghost');
  const words = root.querySelector('.drag-words');
  let drag = null;
  let dragged = false;
  let planning = false;
  let asking = false;

  root.addEventListener('pointerdown', (event) => {
    dragged = drag?.begun ?? false;
    const bar = event.target.closest('a[data-set]');
    if (!bar || drag || planning || !event.isPrimary || event.button !== 0 || event.ctrlKey || event.metaKey || event.shiftKey) {
      return;
    }

    const cell = bar.closest('[data-night]');
    drag = {
      pointer: event.pointerId, by: event.pointerType === 'mouse' ? 'mouse' : 'finger', bar, cell, set: bar.dataset.set,
      byEnd: event.target.classList.contains('end'), start: Number(bar.dataset.start), quarters: Number(bar.dataset.quarters),
      x: event.clientX, y: event.clientY, fromX: event.clientX, fromY: event.clientY, begun: false, place: null,
    };
    drag.held = (drag.byEnd ? drag.start + drag.quarters : drag.start) - quarterAt(cell, drag.x);
    drag.timer = drag.by === 'finger' ? setTimeout(begin, holdMs) : 0;
    addEventListener('pointermove', moved);
    addEventListener('pointerup', released);
    addEventListener('pointercancel', end);
    addEventListener('keydown', escaped, true);
  });

  // A held finger drags; the page must not scroll under it, nor open the menu of a link.
  root.addEventListener('touchmove', (event) => drag?.begun && event.preventDefault(), { passive: false });
  root.addEventListener('contextmenu', (event) => drag?.begun && event.preventDefault());
  root.addEventListener('dragstart', (event) => event.target.closest('a[data-set]') && event.preventDefault());

  // A bar is a link to its row, which may be folded: letting the bar go is not a click on it.
  root.addEventListener('click', (event) => {
    if (dragged && event.detail > 0) {
      event.preventDefault();
    } else {
      document.getElementById(event.target.closest('a[data-set]')?.dataset.set)?.closest('details').setAttribute('open', '');
    }
  }, true);

  function moved(event) {
    if (event.pointerId !== drag.pointer) {
      return;
    }

    [drag.x, drag.y] = [event.clientX, event.clientY];
    if (!drag.begun && Math.hypot(drag.x - drag.fromX, drag.y - drag.fromY) > trembles[drag.by]) {
      drag.by === 'finger' ? end() : begin();
    }
  }

  function begin() {
    drag.begun = dragged = true;
    root.setPointerCapture(drag.pointer);
    root.classList.add('dragging');
    drag.bar.classList.add('lifted');
    requestAnimationFrame(frame);
  }

  function frame() {
    if (!drag?.begun) {
      return;
    }

    const board = drag.cell.closest('.board');
    const { left, right } = board.getBoundingClientRect();
    board.scrollLeft += drag.x > right - edge ? edgeStep : drag.x < left + edge ? -edgeStep : 0;
    hang();
    requestAnimationFrame(frame);
  }

  // Where it hangs now, drawn; asked after only when that is another place.
  function hang() {
    const cell = cellAt(drag.x, drag.y);
    if (!cell) {
      drag.place = null;
      ghost.hidden = words.hidden = true;
      return;
    }

    const most = Math.floor(Number(cell.dataset.quarters));
    const at = Math.round(quarterAt(cell, drag.x) + drag.held);
    const quarter = drag.byEnd ? Math.min(Math.max(at, 0), most) : Math.max(Math.min(at, most - drag.quarters), 0);
    draw(cell, quarter);
    const place = { source: cell.dataset.source, night: cell.dataset.night, quarter };
    if (!same(place, drag.place)) {
      drag.place = place;
      weigh();
    }
  }

  // An end goes along its own row; a set may hang over any, to be told why it cannot stand there.
  function cellAt(x, y) {
    if (!drag.byEnd) {
      const cell = document.elementFromPoint(x, y)?.closest('[data-night]');
      return root.contains(cell) ? cell : null;
    }

    return [...drag.cell.parentElement.children].find((cell) => {
      const { left, right } = cell.getBoundingClientRect();
      return left <= x && x < right;
    });
  }

  function draw(cell, quarter) {
    const origin = root.getBoundingClientRect();
    const { top, height } = bars(cell);
    const from = drag.byEnd ? xOf(drag.cell, drag.start) : xOf(cell, quarter);
    const to = Math.max(drag.byEnd ? xOf(cell, quarter) : xOf(cell, quarter + drag.quarters), from + 2);
    ghost.hidden = false;
    Object.assign(ghost.style, { left: `${from - origin.left}px`, width: `${to - from}px`, top: `${top - origin.top}px`, height: `${height}px` });
    const below = top + height + 6;
    words.style.left = `${Math.max(8, Math.min(drag.x + 12, innerWidth - words.offsetWidth - 8))}px`;
    words.style.top = `${below + words.offsetHeight < innerHeight ? below : top - words.offsetHeight - 6}px`;
  }

  // One question at a time; the place meant is the last.
  async function weigh() {
    if (asking) {
      return;
    }

    asking = true;
    try {
      for (let asked = null; drag?.place && !same(asked, drag.place);) {
        asked = drag.place;
        const answer = await desk.invokeMethodAsync('Weigh', drag.set, drag.byEnd, asked);
        if (drag && same(asked, drag.place)) {
          say(answer);
        }
      }
    } finally {
      asking = false;
    }
  }

  function say(answer) {
    words.textContent = answer.words.join('\n');
    words.hidden = false;
    words.classList.toggle('refused', !answer.stands);
    ghost.classList.toggle('refused', !answer.stands);
  }

  async function released(event) {
    if (event.pointerId !== drag.pointer) {
      return;
    }

    if (!drag.begun) {
      end();
      return;
    }

    hang();
    const { set, byEnd, place, bar } = drag;
    end();
    if (!place) {
      return;
    }

    // The ghost stays until the plan that keeps to it is drawn.
    planning = true;
    ghost.hidden = false;
    bar.classList.add('lifted');
    try {
      await desk.invokeMethodAsync('DropAsync', set, byEnd, place);
    } finally {
      planning = false;
      ghost.hidden = true;
      bar.classList.remove('lifted');
    }
  }

  function escaped(event) {
    if (event.key === 'Escape' && drag.begun) {
      event.preventDefault();
      event.stopPropagation();
      end();
    }
  }

  function end(event) {
    if (event && event.pointerId !== drag.pointer) {
      return;
    }

    clearTimeout(drag.timer);
    removeEventListener('pointermove', moved);
    removeEventListener('pointerup', released);
    removeEventListener('pointercancel', end);
    removeEventListener('keydown', escaped, true);
    root.classList.remove('dragging');
    drag.bar.classList.remove('lifted');
    ghost.hidden = words.hidden = true;
    ghost.classList.remove('refused');
    drag = null;
  }
}

const bars = (cell) => cell.querySelector('.bars').getBoundingClientRect();

const same = (one, other) => one?.source === other?.source && one?.night === other?.night && one?.quarter === other?.quarter;

function quarterAt(cell, x) {
  const { left, width } = bars(cell);
  return ((x - left) / width) * Number(cell.dataset.quarters);
}

function xOf(cell, quarter) {
  const { left, width } = bars(cell);
  return left + (quarter / Number(cell.dataset.quarters)) * width;
}
