// Keeps what is written on the phone until it is in the book. Without this script every form is sent as it is.
'use strict';

(() => {
  const AGAIN_MS = 60000;
  const PROBE_MS = 3600000;
  const BOX = /^(\d{4}-\d\d-\d\d)\.([^.]+)\.([^.]*)\.(.+)$/;

  const find = (selector, within = document) => within.querySelector(selector);
  const every = (selector, within = document) => [...within.querySelectorAll(selector)];
  const say = (name, put = {}) => {
    const words = find(`[data-say="${name}"]`, find('#kept-words').content);
    return Object.entries(put).reduce((text, [key, value]) => text.replace(`#${key}#`, value), words.textContent);
  };
  const make = (tag, text, kind) => {
    const made = document.createElement(tag);
    if (text) made.textContent = text;
    if (kind) made.className = kind;
    return made;
  };
  const button = (text, kind, press) => {
    const made = make('button', text, kind);
    made.type = 'button';
    made.addEventListener('click', press);
    return made;
  };

  // From a form to a draft.

  const is_typed = box => BOX.test(box.name) && box.type !== 'hidden' && box.value !== '';
  const is_given = box => is_typed(box) && (!['checkbox', 'radio'].includes(box.type) || box.checked);
  const is_changed = box => {
    if (box.tagName === 'SELECT') return ![...box.selectedOptions].every(option => option.defaultSelected);
    return ['checkbox', 'radio'].includes(box.type) ? box.checked !== box.defaultChecked : box.value !== box.defaultValue;
  };
  const label_of = box => {
    const label = box.labels && box.labels[0] ? box.labels[0].textContent.trim() : box.getAttribute('aria-label') || '';
    if (['checkbox', 'radio'].includes(box.type)) {
      const legend = find('legend', box.closest('fieldset'));
      return legend ? `${legend.textContent.trim()}: ${label}` : label;
    }
    const unit = box.parentElement.querySelector('.unit');
    const text = box.tagName === 'SELECT' ? box.selectedOptions[0].textContent : box.value;
    return `${label}: ${text.trim()}${unit ? ' ' + unit.textContent.trim() : ''}`;
  };
  // What it is, for people: only what was changed, where something was.
  const lines_of = (form, pressed) => {
    if (pressed && pressed.name === 'task') return [pressed.textContent.trim()];
    const given = [...form.elements].filter(is_given);
    const changed = given.filter(is_changed);
    return (changed.length ? changed : given).map(label_of);
  };
  const title_of = form => form.dataset.title || find('h1').textContent;

  const pairs_of = (form, pressed) => {
    const pairs = [...new FormData(form)].filter(([name, text]) => typeof text === 'string' && (text || name.endsWith('.seen-entry')));
    const kept = pairs.filter(([name]) => !name.endsWith('.entry-id') && name !== 'draft');
    const ids = kept.filter(([name]) => name.endsWith('.seen-entry')).map(([name]) => [name.replace(/seen-entry$/, 'entry-id'), queue.fresh_id()]);
    const press = pressed && pressed.name ? [[pressed.name, pressed.value]] : [];
    return [...kept, ...ids, ...press];
  };
  const draft_of = (form, pressed) => ({
    id: queue.fresh_id(),
    to: new URL(form.action).pathname,
    form: pairs_of(form, pressed),
    seen: JSON.parse(form.dataset.seen || '{}'),
    written: Date.now(),
    title: title_of(form),
    day: form.dataset.day || '',
    lines: lines_of(form, pressed),
  });

  // Shows a draft in the form it was written on, where the book then says what is to be looked at.
  const look_at = async draft => {
    // It waits again: what is written from there on is found in the book.
    await queue.keep(Object.assign(draft, { word: '' }));
    const form = make('form');
    form.method = 'post';
    form.action = draft.to;
    form.hidden = true;
    for (const [name, value] of [...draft.form, ['draft', draft.id]]) {
      const box = make('input');
      Object.assign(box, { type: 'hidden', name, value });
      form.append(box);
    }
    document.body.append(form);
    form.submit();
  };

  // What waits, on every page.

  const STATES = ['doubted', 'refused', 'asked'];
  const described = draft => {
    const item = make('li');
    item.append(make('strong', draft.day ? `${draft.title}, ${draft.day}` : draft.title));
    for (const line of draft.lines) item.append(make('div', line));
    if (STATES.includes(draft.word)) item.append(make('div', say(draft.word), 'kept-state'));
    for (const line of draft.why || []) item.append(make('div', line, 'why'));
    return item;
  };
  const ways_on = draft => {
    const ways = make('div', '', 'kept-ways');
    if (draft.word === 'asked') {
      const link = make('a', say('look'), 'button');
      link.href = draft.look || '/';
      link.addEventListener('click', () => queue.forget(draft));
      ways.append(link);
      return ways;
    }
    if (draft.word) ways.append(button(say('look'), '', () => look_at(draft)));
    const away = button(say('take-away'), 'quiet', () => {
      if (away.dataset.sure) return queue.forget(draft).then(queue.tell).then(show);
      away.dataset.sure = 'yes';
      away.textContent = say('take-away-sure');
      return undefined;
    });
    ways.append(away);
    return ways;
  };

  let last_word = '';
  const remarks = async (drafts, clock) => {
    const waits = drafts.some(queue.is_waiting);
    const said = [];
    if (last_word) said.push(last_word);
    if (waits && drafts.length > queue.in_open_page()) said.push(say('goes-up'));
    if (queue.in_open_page() && last_word !== say('full')) said.push(say('only-open'));
    if (drafts.length && !window.isSecureContext) said.push(say('insecure'));
    if (clock) said.push(clock);
    return said.map(text => make('p', text));
  };

  const show = async () => {
    const drafts = await queue.all();
    const clock = await queue.noted('clock');
    const waiting = drafts.filter(queue.is_waiting).length;
    const to_look = drafts.length - waiting;
    const bar = find('#kept');
    const counts = [];
    if (waiting) counts.push(say('waiting', { n: waiting }));
    if (to_look) counts.push(say('to-look', { n: to_look }));
    if (!counts.length && clock) counts.push(say('clock'));
    find('.kept-count', bar).textContent = counts.join(' · ');
    find('.kept-said', bar).replaceChildren(...(await remarks(drafts, clock)));
    find('.kept-list', bar).replaceChildren(...drafts.map(described));
    bar.hidden = !drafts.length && !clock;
    const whole = find('#kept-all');
    if (!whole) return;
    bar.hidden = true;
    const cards = drafts.map(draft => {
      const card = described(draft);
      card.append(ways_on(draft));
      return card;
    });
    whole.replaceChildren(...(await remarks(drafts, clock)), ...cards);
    if (!drafts.length) whole.append(make('p', say('none')));
  };

  const tell = text => {
    last_word = text;
    return show();
  };

  const send = async asks_anyway => {
    const how = await queue.send(asks_anyway);
    last_word = ['trouble', 'shut'].includes(how) ? say(how) : '';
    await show();
    return how;
  };

  // Pages that are open show what waits in their boxes.

  const overlay = async () => {
    const drafts = (await queue.all()).filter(draft => draft.word !== 'asked');
    for (const form of every('form[data-kept]')) {
      const path = new URL(form.action).pathname;
      for (const draft of drafts) {
        if (path.endsWith('/tick') && draft.to === path) mark_ticked(form, draft);
        else if (/\/(day|week)$/.test(path) && draft.to.startsWith(path.replace(/\w+$/, ''))) fill(form, draft);
      }
    }
  };
  const mark_ticked = (form, draft) => {
    const value = name => (draft.form.find(([key]) => key === name) || [])[1];
    const day = find('[name="on"]', form);
    const box = every('button[name="task"]', form).find(one => one.value === value('task'));
    if (!box || !day || day.value !== value('on')) return;
    box.classList.add('ticked');
    box.disabled = true;
    box.prepend('✓');
  };
  const fill = (form, draft) => {
    const sent = new Map(draft.form);
    for (const [name, text] of draft.form) {
      const boxes = [...form.elements].filter(box => box.name === name && BOX.test(name));
      for (const box of boxes) {
        if (['checkbox', 'radio'].includes(box.type)) box.checked = draft.form.some(([key, value]) => key === name && value === box.value);
        else if (!name.endsWith('.seen-entry')) box.value = text;
        else box.value = sent.get(name.replace(/seen-entry$/, 'entry-id')) || text;
      }
    }
  };

  // A form is kept first and sent then.

  const settled_here = form => {
    const path = new URL(form.action).pathname;
    if (/\/(day|week|tick)$/.test(path)) return overlay();
    form.hidden = true;
    return undefined;
  };
  const known_as = async form => {
    const id = form.dataset.draft;
    return id ? (await queue.all()).find(draft => draft.id === id) : undefined;
  };
  // Pages can be had again; what was written cannot.
  const make_room = async () => {
    if (!window.caches) return;
    const kept = await caches.open('pages');
    const pages = (await kept.keys()).filter(request => /\/(batch|before)\//.test(request.url));
    for (const request of pages) await kept.delete(request);
  };
  const keep = async draft => {
    if (await queue.keep(draft)) return true;
    await make_room();
    return queue.keep(draft);
  };
  const at_home = draft => `${draft.to.split('/').slice(0, 3).join('/')}?saved=1${on_of(draft)}`;
  const on_of = draft => {
    const on = (draft.form.find(([name]) => name === 'on') || [])[1];
    return on ? `&on=${encodeURIComponent(on)}` : '';
  };

  const submitted = async (form, pressed) => {
    const before = await known_as(form);
    const draft = draft_of(form, pressed);
    const is_safe = await keep(draft);
    if (before) await queue.forget(before);
    if (navigator.storage && navigator.storage.persist) navigator.storage.persist().catch(() => {});
    await tell(say('sending'));
    ask_for_sync();
    const how = await send();
    const now = (await queue.all()).find(other => other.id === draft.id);
    if (how === 'heard' && !now) return location.assign(at_home(draft));
    if (how === 'heard' && now && now.word === 'asked') return queue.forget(now).then(() => location.assign(now.look));
    if (now && now.word) return look_at(now);
    if (how === 'unheard' || !is_safe) await tell(say(is_safe ? 'here' : 'full'));
    find('#kept details').open = true;
    find('#kept').scrollIntoView({ block: 'start' });
    find('#kept summary').focus({ preventScroll: true });
    return settled_here(form);
  };

  document.addEventListener('submit', event => {
    const form = event.target;
    if (!form.matches('form[data-kept]')) return;
    event.preventDefault();
    if (form.dataset.busy) return;
    form.dataset.busy = 'yes';
    submitted(form, event.submitter).finally(() => delete form.dataset.busy);
  });
  window.addEventListener('beforeunload', event => {
    if (queue.in_open_page()) event.preventDefault();
  });

  // A page that was kept is about the day it was kept on.

  const two = number => String(number).padStart(2, '0');
  const today = () => {
    const now = new Date();
    return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  };
  const in_words = day => {
    const name = { month: 'short' };
    return `${Number(day.slice(8))} ${new Date(`${day}T12:00:00`).toLocaleDateString(document.documentElement.lang, name)}`;
  };
  const move_to = (form, day) => {
    const shift = text => text.replace(form.dataset.on, day);
    for (const box of form.elements) {
      if (!BOX.test(box.name)) continue;
      box.name = shift(box.name);
      if (['checkbox', 'radio'].includes(box.type)) box.checked = false;
      else box.value = '';
    }
    find('[name="on"]', form).value = day;
    Object.assign(form.dataset, { on: day, day: in_words(day) });
    for (const aside of every('.expected, .faults', form)) aside.remove();
    for (const other of every('form[action$="/tick"], .unwritten')) other.remove();
    const line = find('.day-line strong');
    if (line) line.textContent = in_words(day);
    return overlay();
  };
  const ask_day = () => {
    const form = find('form[data-asks-day]');
    if (!form || new URLSearchParams(location.search).has('on')) return;
    const day = form.dataset.on;
    const by_phone = today();
    if (day === by_phone) return;
    const put = { at: form.dataset.day, by: in_words(by_phone) };
    const asked = make('section', '', 'conflict');
    asked.id = 'which-day';
    asked.setAttribute('role', 'status');
    const settle = () => asked.remove();
    asked.append(
      make('p', say('other-day', put)),
      button(say('other-day-take', put), '', () => move_to(form, by_phone).then(settle)),
      button(say('other-day-stay', put), 'quiet', settle),
    );
    find('main h1').after(asked);
  };

  // The pages that open without signal.

  const ask_for_sync = async () => {
    if (!navigator.serviceWorker) return;
    const worker = await navigator.serviceWorker.getRegistration();
    if (worker && worker.sync) await worker.sync.register('queue').catch(() => {});
  };
  const keep_pages = async () => {
    if (!navigator.serviceWorker) return;
    await navigator.serviceWorker.register('/worker.js').catch(() => {});
    const worker = await navigator.serviceWorker.ready;
    const links = every('[data-keeps] a').map(link => link.href);
    worker.active.postMessage([...new Set([location.href, ...links])]);
  };
  const kept_pages = async () => {
    const list = find('#kept-pages');
    if (!list || !window.caches) return;
    const requests = await (await caches.open('pages')).keys();
    for (const request of requests) {
      const url = new URL(request.url);
      if (!/^\/batch\/[^/]+(\/week|\/write\/.*)?$/.test(url.pathname)) continue;
      const text = await (await caches.match(request)).text();
      const page = new DOMParser().parseFromString(text, 'text/html');
      const item = make('li');
      const of_batch = find('.subtitle', page) || page.head;
      const about = [find('h1', page).textContent, of_batch.textContent.split(',')[0]];
      const link = make('a', about.join(', '));
      link.href = url.pathname + url.search;
      item.append(link);
      list.append(item);
    }
  };

  const probe = async () => {
    const last = (await queue.noted('probed')) || 0;
    const due = Math.abs(Date.now() - last) > PROBE_MS;
    if ((await send(due)) === 'heard' && due) await queue.note('probed', Date.now());
  };
  const again = async () => {
    if (!(await queue.all()).some(queue.is_waiting)) return;
    // What is kept of the pages was made before.
    if ((await send()) === 'heard') await keep_pages();
  };

  show().then(overlay).then(ask_day).then(probe);
  keep_pages();
  kept_pages();
  queue.on_change(show);
  window.addEventListener('online', again);
  window.addEventListener('pageshow', event => event.persisted && show());
  document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && again());
  setInterval(again, AGAIN_MS);
})();

// Sliders beside the boxes of a form that only asks: what is moved is answered at once, in place. Without this script the form is
// sent as it is.
(() => {
  for (const form of document.querySelectorAll('form[data-slides]')) {
    const places = ['answer', 'answer-in-short'];
    let asked = 0;
    const answer = async () => {
      const mine = (asked += 1);
      const address = `${form.getAttribute('action')}?${new URLSearchParams(new FormData(form))}`;
      const response = await fetch(address).catch(() => null);
      // A later move has overtaken this one, or there is no signal: the button still sends the form.
      if (!response || mine !== asked) return;
      const page = new DOMParser().parseFromString(await response.text(), 'text/html');
      if (!places.every(id => page.getElementById(id))) return;
      places.forEach(id => document.getElementById(id).replaceChildren(...page.getElementById(id).childNodes));
      history.replaceState(null, '', address);
    };
    for (const [name, [low, high, step]] of Object.entries(JSON.parse(form.dataset.slides))) {
      const box = form.elements[name];
      if (!box) continue;
      const slide = document.createElement('input');
      Object.assign(slide, { type: 'range', min: low, max: high, step, className: 'slide' });
      slide.value = box.value || low;
      slide.setAttribute('aria-label', box.labels[0] ? box.labels[0].textContent.trim() : name);
      slide.addEventListener('input', () => (box.value = slide.value));
      box.addEventListener('change', () => (slide.value = box.value || low));
      box.parentElement.after(slide);
    }
    form.addEventListener('change', answer);
  }
})();
