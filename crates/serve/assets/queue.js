// What was put down on this phone and is not in the book yet. Pages and the worker share it.
'use strict';

const queue = (() => {
  // So much goes up at once: little enough for a poor line, far below what the book looks at in one call.
  const AT_ONCE = 40;
  const BYTES_AT_ONCE = 150000;
  const PATIENCE_MS = 20000;
  const ROUNDS_MOST = 200;

  // What no storage took stands here, in the open page alone.
  const open_page = [];
  let under_way = null;

  const done = request =>
    new Promise((well, ill) => {
      request.onsuccess = () => well(request.result);
      request.onerror = () => ill(request.error);
    });

  const database = () => {
    const opening = indexedDB.open('book-of-days', 1);
    opening.onupgradeneeded = () => {
      opening.result.createObjectStore('drafts', { keyPath: 'at', autoIncrement: true });
      opening.result.createObjectStore('about');
    };
    return done(opening);
  };

  // Does one thing to a store, and answers when it is kept for good.
  const within = async (store, mode, what) => {
    const base = await database();
    try {
      const dealing = base.transaction(store, mode, { durability: 'strict' });
      const over = new Promise((well, ill) => {
        dealing.oncomplete = well;
        dealing.onabort = () => ill(dealing.error || new Error('not kept'));
      });
      over.catch(() => {});
      const result = await done(what(dealing.objectStore(store)));
      await over;
      return result;
    } finally {
      base.close();
    }
  };

  const all = async () => {
    const kept = await within('drafts', 'readonly', drafts => drafts.getAll()).catch(() => []);
    return [...kept, ...open_page];
  };

  // A fresh id that sorts by time, version 7.
  const fresh_id = () => {
    const bytes = crypto.getRandomValues(new Uint8Array(16));
    const now = Date.now();
    for (let at = 0; at < 6; at++) bytes[at] = Math.floor(now / 2 ** (8 * (5 - at))) % 256;
    bytes[6] = (bytes[6] & 15) | 112;
    bytes[8] = (bytes[8] & 63) | 128;
    const text = [...bytes].map(byte => byte.toString(16).padStart(2, '0')).join('');
    return text.replace(/^(.{8})(.{4})(.{4})(.{4})/, '$1-$2-$3-$4-');
  };

  // Keeps a draft; says whether it outlives the open page.
  const keep = async draft => {
    const in_page = open_page.findIndex(other => other.id === draft.id);
    if (in_page >= 0) open_page.splice(in_page, 1);
    try {
      const at = await within('drafts', 'readwrite', drafts => drafts.put(draft));
      draft.at = at;
      return true;
    } catch (_) {
      open_page.push(draft);
      return false;
    }
  };

  const forget = async draft => {
    const in_page = open_page.findIndex(other => other.id === draft.id);
    if (in_page >= 0) open_page.splice(in_page, 1);
    if (draft.at !== undefined) await within('drafts', 'readwrite', drafts => drafts.delete(draft.at));
  };

  const note = async (name, value) => {
    const put = about => (value === null ? about.delete(name) : about.put(value, name));
    await within('about', 'readwrite', put).catch(() => {});
  };
  const noted = name => within('about', 'readonly', about => about.get(name)).catch(() => undefined);

  // The key of this phone, known to it and to the book alone.
  let key_of_page = null;
  const key = async () => {
    key_of_page = (await noted('key')) || key_of_page || fresh_id();
    await note('key', key_of_page);
    return key_of_page;
  };

  // Other ids for the entries to be; those that are in the book already are put right.
  const renew = (draft, puts_right) => {
    const old = new Map(draft.form.filter(([name]) => name.endsWith('.entry-id')));
    const of_entry = name => name.replace(/\.seen-entry$/, '.entry-id');
    draft.id = fresh_id();
    draft.form = draft.form.map(([name, text]) => {
      if (name.endsWith('.entry-id')) return [name, fresh_id()];
      if (puts_right && name.endsWith('.seen-entry')) return [name, old.get(of_entry(name)) || text];
      return [name, text];
    });
  };

  // Follows what the book says of a draft.
  const follow = async (draft, fate) => {
    const { word, says, at } = fate;
    if (word === 'written' || word === 'known') return forget(draft);
    if (word === 'not-yet') return undefined;
    if (word === 'id-in-use' || word === 'taken-otherwise') {
      // Under its own key: the new one takes the old one's place.
      await forget(draft);
      delete draft.at;
      renew(draft, word === 'taken-otherwise');
    } else {
      Object.assign(draft, { word, why: says, look: at });
    }
    return keep(draft);
  };

  const is_waiting = draft => !draft.word;

  const next = async () => {
    const waiting = (await all()).filter(is_waiting);
    const part = [];
    let bytes = 0;
    for (const draft of waiting.slice(0, AT_ONCE)) {
      bytes += JSON.stringify(draft).length;
      if (part.length && bytes > BYTES_AT_ONCE) break;
      part.push(draft);
    }
    return part;
  };

  const post = async part => {
    const drafts = part.map(({ id, to, form, seen, written }) => ({ id, to, form, seen, written }));
    const body = JSON.stringify({ phone: await key(), sent: Date.now(), drafts });
    const headers = { 'content-type': 'application/json' };
    const patience = new AbortController();
    const bell = setTimeout(() => patience.abort(), PATIENCE_MS);
    try {
      return await fetch('/queue', { method: 'POST', headers, body, cache: 'no-store', signal: patience.signal });
    } finally {
      clearTimeout(bell);
    }
  };

  // Sends the oldest ones, part by part, until nothing waits or nobody answers.
  const send_all = async asks_anyway => {
    for (let round = 0; round < ROUNDS_MOST; round++) {
      const part = await next();
      if (!part.length && !(asks_anyway && round === 0)) return 'heard';
      const answer = await post(part).catch(() => null);
      if (!answer) return 'unheard';
      if (!answer.ok) return answer.status === 403 ? 'shut' : 'trouble';
      const told = await answer.json().catch(() => null);
      if (!told) return 'unheard';
      for (const [at, draft] of part.entries()) if (told.drafts[at]) await follow(draft, told.drafts[at]);
      await note('clock', told.clock);
      if (told.copied) await note('key', fresh_id());
    }
    return 'heard';
  };

  // One at a time in all pages and the worker, where the browser has locks; the book takes each once in any case.
  const alone = task => (self.navigator.locks ? navigator.locks.request('queue', task) : task());

  const send = (asks_anyway = false) => {
    if (!under_way) {
      under_way = alone(() => send_all(asks_anyway)).finally(() => {
        under_way = null;
        tell();
      });
    }
    return under_way;
  };

  // Other pages of this phone hear that something changed.
  const channel = self.BroadcastChannel ? new BroadcastChannel('queue') : null;
  const tell = () => channel && channel.postMessage('changed');
  const on_change = hear => channel && channel.addEventListener('message', hear);

  const in_open_page = () => open_page.length;

  return { all, keep, forget, send, tell, noted, note, fresh_id, is_waiting, on_change, in_open_page };
})();
