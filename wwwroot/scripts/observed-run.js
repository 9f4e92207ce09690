// The page beside the vehicle: a tap is stamped on this device and shown at once, kept on it, and sent until the server
// has it. Each tap carries an id of its own, so one that is sent twice counts once; a lost connection loses nothing.
(() => {
  "use strict";

  const page = document.querySelector("[data-observe]");
  if (page) begin();

  function begin() {
    const form = page.querySelector("[data-taps]");
    const undoing = page.querySelector("[data-undoing]");
    const back = undoing.querySelector("button");
    const list = page.querySelector("[data-tapped]");
    const rows = new Map([...page.querySelectorAll("[data-row]")].map(row => [row.dataset.row, row]));
    const clock = runClock(Number(page.dataset.elapsed));
    const word = page.querySelector("[data-save-word]");
    const lastWord = page.querySelector("[data-last]");
    const nothing = lastWord.textContent;
    const kept = keeping(`observed-run:${page.dataset.observe}`);
    const entries = [...list.children].map(item => ({
      id: item.dataset.tap, step: item.dataset.step, seconds: Number(item.dataset.seconds), back: item.classList.contains("tapped-back"),
    }));
    let busy = false;
    let lastTapAt = 0;

    for (const item of kept.all()) take(item);
    draw();
    send();
    synchronise();
    stayAwake();
    setInterval(tick, 250);
    setInterval(send, 4000);
    addEventListener("online", () => { send(); synchronise(); });
    document.addEventListener("visibilitychange", () => { if (!document.hidden) { send(); synchronise(); stayAwake(); } });

    form.addEventListener("submit", event => {
      event.preventDefault();
      const button = event.submitter;
      if (!button?.value) return;
      // A finger that lands twice: the second landing on "again" comes too soon to be meant.
      const now = performance.now();
      if (button.classList.contains("again") && now - lastTapAt < 800) return;
      lastTapAt = now;
      const hadFocus = document.activeElement === button;
      const tap = { kind: "tap", id: crypto.randomUUID?.() ?? randomId(), step: button.value, seconds: notBefore(clock.now()) };
      add(tap);
      if (hadFocus) button.closest("[data-row]").focus({ preventScroll: true });
      navigator.vibrate?.(30);
    });

    undoing.addEventListener("submit", event => {
      event.preventDefault();
      const last = standing().at(-1);
      if (last) add({ kind: "undo", id: last.id });
    });

    // The end waits for the taps before it: it is posted once the server has them all, and not without a connection.
    page.querySelector("[data-ending]").addEventListener("submit", async event => {
      if (kept.all().length === 0) return;
      event.preventDefault();
      const ending = event.target;
      while (busy) await new Promise(resolve => setTimeout(resolve, 50));
      await send();
      if (kept.all().length === 0) ending.submit();
      else say(page.dataset.wordWaitEnd, true);
    });

    function standing() { return entries.filter(entry => !entry.back); }

    // The server takes no tap before the one before it; rounded up to 10 ms so that rounding never makes it earlier.
    function notBefore(seconds) {
      return Math.ceil(Math.max(seconds, standing().at(-1)?.seconds ?? 0) * 100) / 100;
    }

    function add(item) {
      kept.add(item);
      take(item);
      draw();
      send();
    }

    function take(item) {
      const entry = entries.find(other => other.id === item.id);
      if (item.kind === "undo") { if (entry) entry.back = true; }
      else if (!entry) entries.push({ id: item.id, step: item.step, seconds: item.seconds, back: false });
    }

    async function send() {
      if (busy) return;
      busy = true;
      try {
        for (let item = kept.first(); item; item = kept.first()) if (!(await sendOne(item))) break;
      } finally {
        busy = false;
        progress();
      }
    }

    async function sendOne(item) {
      const body = new URLSearchParams({ "form-token": form.querySelector("[name=form-token]").value, id: item.id });
      if (item.kind === "tap") { body.set("step", item.step); body.set("seconds", item.seconds.toFixed(2)); }
      let answer;
      try {
        answer = await fetch(item.kind === "tap" ? form.action : undoing.action,
          { method: "POST", body, headers: { Accept: "application/json" }, redirect: "manual" });
      } catch {
        return false;
      }

      if (answer.ok) { kept.remove(item); return true; }
      if (answer.type === "opaqueredirect" || answer.status === 401) { say(page.dataset.wordSignIn, true); return false; }
      if (answer.status === 409 || answer.status === 404) {
        kept.remove(item);
        const entry = entries.find(other => other.id === item.id);
        if (entry && item.kind === "tap") entries.splice(entries.indexOf(entry), 1);
        say((await answer.json().catch(() => null))?.detail ?? page.dataset.wordStale, true);
        draw();
        return true;
      }

      if (answer.status < 500) say(page.dataset.wordStale, true);
      return false;
    }

    async function synchronise() {
      const asked = performance.now();
      try {
        const answer = await fetch(location.href, { headers: { Accept: "application/json" }, redirect: "manual" });
        if (!answer.ok) return;
        const run = await answer.json();
        const journey = (performance.now() - asked) / 1000;
        clock.set(run.elapsedSeconds + journey / 2, Math.max(0.7, journey));
        if (!run.isUnderWay) say(page.dataset.wordEnded, true);
      } catch {
        // No connection: the device's own count goes on.
      }
    }

    function say(text, grave) {
      word.textContent = text;
      word.classList.toggle("wrong", Boolean(grave));
    }

    function progress() {
      const waiting = kept.all().length;
      if (waiting > 0) { if (!word.classList.contains("wrong")) say(page.dataset.wordKept.replace("{0}", waiting)); }
      else if (!word.classList.contains("wrong")) say(entries.length > 0 ? page.dataset.wordSent : "");
    }

    function tick() {
      const text = written(clock.now());
      const face = page.querySelector("[data-clock]");
      if (face.textContent !== text) face.textContent = text;
      const since = page.querySelector("[data-since]");
      const last = standing().at(-1);
      const told = last ? since.dataset.word.replace("{0}", written(Math.max(0, clock.now() - last.seconds))) : since.dataset.wordNone;
      if (since.textContent !== told) since.textContent = told;
    }

    function draw() {
      const places = new Map();
      standing().forEach((entry, index) => places.set(entry.step, [...(places.get(entry.step) ?? []), index + 1]));
      for (const [step, row] of rows) {
        const at = places.get(step) ?? [];
        row.tabIndex = -1;
        row.classList.toggle("is-done", at.length > 0);
        row.querySelector(".place").textContent = at.join(", ");
        row.querySelector(".tap").disabled = at.length > 0;
        row.querySelector(".again").hidden = at.length === 0;
      }

      let place = 0;
      list.replaceChildren(...entries.map(entry => {
        const item = document.createElement("li");
        // What was taken back has no number of its own.
        item.value = entry.back ? place : ++place;
        const time = document.createElement("span");
        time.className = "mono";
        time.textContent = written(entry.seconds);
        const text = document.createElement("span");
        text.textContent = textOf(entry.step);
        item.append(time, " ", text);
        if (entry.back) {
          item.className = "tapped-back";
          const note = document.createElement("small");
          note.textContent = list.dataset.wordBack;
          item.append(" ", note);
        }
        return item;
      }));
      page.querySelector(".tapped-none").hidden = entries.length > 0;

      const last = standing().at(-1);
      lastWord.textContent = last ? `${standing().length} · ${written(last.seconds)} · ${textOf(last.step)}` : nothing;
      back.disabled = !last;
      back.setAttribute("aria-label", last ? back.dataset.word.replace("{0}", textOf(last.step)) : back.textContent);
    }

    function textOf(step) { return rows.get(step)?.querySelector(".text").textContent ?? step; }
  }

  function written(seconds) {
    const whole = Math.floor(seconds);
    return `${String(Math.floor(whole / 60)).padStart(2, "0")}:${String(whole % 60).padStart(2, "0")}`;
  }

  // Counts seconds since the start of the run from what the server said. The steady clock of a browser may stand still
  // while the device sleeps; where the wall clock has gone on more than a second further, it is believed instead.
  function runClock(elapsed) {
    const answered = performance.getEntriesByType("navigation")[0]?.responseStart ?? 0;
    let base = elapsed + (performance.now() - answered) / 1000;
    let steady = performance.now();
    let wall = Date.now();
    const now = () => {
      const bySteady = (performance.now() - steady) / 1000;
      const byWall = (Date.now() - wall) / 1000;
      return base + (byWall - bySteady > 1 ? byWall : bySteady);
    };
    const set = (seconds, tolerance) => {
      if (Math.abs(seconds - now()) <= tolerance) return;
      base = seconds;
      steady = performance.now();
      wall = Date.now();
    };
    return { now, set };
  }

  // What the server does not have yet, in order; on the device where it can be, so that closing the page loses nothing.
  function keeping(key) {
    let items = [];
    try { items = JSON.parse(localStorage.getItem(key) ?? "[]"); } catch { /* kept in memory alone */ }
    const write = () => {
      try {
        if (items.length > 0) localStorage.setItem(key, JSON.stringify(items));
        else localStorage.removeItem(key);
      } catch { /* kept in memory alone */ }
    };
    return {
      all: () => items,
      first: () => items[0],
      add: item => { items.push(item); write(); },
      remove: item => { items = items.filter(other => other !== item); write(); },
    };
  }

  async function stayAwake() {
    try { await navigator.wakeLock?.request("screen"); } catch { /* the device decides */ }
  }

  // Where a page is not served over a secure address, browsers have no randomUUID (RFC 9562 version 4).
  function randomId() {
    const bytes = crypto.getRandomValues(new Uint8Array(16));
    bytes[6] = (bytes[6] & 0x0f) | 0x40;
    bytes[8] = (bytes[8] & 0x3f) | 0x80;
    const text = [...bytes].map(byte => byte.toString(16).padStart(2, "0")).join("");
    return [text.slice(0, 8), text.slice(8, 12), text.slice(12, 16), text.slice(16, 20), text.slice(20)].join("-");
  }
})();
