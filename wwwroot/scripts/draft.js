// Writing on a draft: keeps the text a second after each change, checks it meanwhile, and tells who else is here.
// Without this script the buttons do the same.
(() => {
  "use strict";

  const form = document.querySelector("form[data-draft]");
  const text = form.elements.text;
  const version = form.elements.version;
  const word = form.querySelector("[data-save-word]");
  const gutter = form.querySelector("[data-gutter]");
  const check = document.querySelector("[data-check]");
  const address = form.dataset.address;
  const kept = `draft:${address}`;
  let saved = text.value;
  let saving = null;
  let later = 0;
  let checking = new AbortController();

  // Whoever presses Enter in a field of the sentences means the change of that part, not a mere saving of the text.
  document.addEventListener("keydown", event => {
    if (event.key !== "Enter" || !event.target.matches("[data-form] input")) return;
    event.preventDefault();
    event.target.closest("details").querySelector("button").click();
  });
  text.addEventListener("input", () => {
    number();
    clearTimeout(later);
    later = setTimeout(() => { save(); look(); }, 900);
  });
  // An edit in the sentences takes the text along.
  form.addEventListener("submit", () => { clearTimeout(later); saved = text.value; forget(); });
  addEventListener("pagehide", () => { if (text.value !== saved) send(true); });
  addEventListener("beforeunload", event => { if (text.value !== saved && !navigator.onLine) event.preventDefault(); });
  document.addEventListener("visibilitychange", () => { if (document.hidden && text.value !== saved) save(); });
  check.addEventListener("click", event => {
    const link = event.target.closest("[data-to-line]");
    if (!link) return;
    event.preventDefault();
    goTo(Number(link.dataset.toLine));
  });
  bringBack();
  marks();
  setInterval(watch, 15000);

  // Reads the newest text once the one before it has arrived, so that each save builds on the last.
  async function save() {
    if (saving) return saving;
    saving = (async () => {
      while (text.value !== saved) {
        word.textContent = form.dataset.wordSaving;
        remember();
        if (!await send(false)) { later = setTimeout(save, 4000); break; }
      }
    })();
    await saving;
    saving = null;
  }

  async function send(leaving) {
    const sent = text.value;
    const body = new FormData(form);
    body.set("text", sent);
    try {
      // A body above 64 KiB is not kept alive; then the tab keeps the text.
      const answer = await fetch(address, {
        method: "POST", body, headers: { Accept: "application/json" }, keepalive: leaving && sent.length < 60000, redirect: "manual",
      });
      if (answer.type === "opaqueredirect" || answer.status === 401) { word.textContent = form.dataset.wordLeft; return false; }
      const said = await answer.json();
      if (!answer.ok) { word.textContent = said.detail; return false; }
      saved = sent;
      forget();
      word.textContent = said.said;
      if (said.isBeside) location.assign(`${address}#beside`), location.reload();
      version.value = said.version;
      return true;
    } catch {
      word.textContent = form.dataset.wordUnsaved;
      return false;
    }
  }

  async function look() {
    checking.abort();
    checking = new AbortController();
    const body = new FormData(form);
    body.set("text", text.value);
    body.set("part", "true");
    try {
      const answer = await fetch(`${address}/check`, { method: "POST", body, signal: checking.signal, redirect: "manual" });
      if (!answer.ok) return;
      const fresh = new DOMParser().parseFromString(await answer.text(), "text/html");
      replace(check, fresh.querySelector("[data-check]"));
      const sentences = document.querySelector("[data-form]");
      if (!sentences.contains(document.activeElement)) replace(sentences, fresh.querySelector("[data-form]"));
      marks();
    } catch {
      // The next pause in typing asks again.
    }
  }

  // What was opened stays open.
  function replace(old, fresh) {
    const open = [...old.querySelectorAll("details[open]")].map(part => part.dataset.keep);
    old.replaceChildren(...fresh.childNodes);
    for (const part of old.querySelectorAll("details")) part.open = open.includes(part.dataset.keep);
  }

  async function watch() {
    if (document.hidden) return;
    try {
      const answer = await fetch(`${address}/now`, { headers: { Accept: "application/json" }, redirect: "manual" });
      if (!answer.ok) return;
      const now = await answer.json();
      document.querySelector("[data-others]").textContent = now.others;
      if (now.version === Number(version.value) || saving) return;
      document.querySelector("[data-changed]").textContent = now.changed;
      document.querySelector("[data-moved]").hidden = false;
    } catch {
      // No connection: the next look tries again.
    }
  }

  function number() {
    const lines = text.value.split("\n").length;
    const numbered = Math.min(lines, Number(gutter.dataset.most));
    text.rows = lines + 1;
    if (gutter.children.length === numbered) return;
    gutter.textContent = "";
    for (let line = 1; line <= numbered; line++) {
      const span = document.createElement("span");
      span.textContent = line;
      gutter.append(span, "\n");
    }
    marks();
  }

  function marks() {
    for (const line of gutter.children) line.className = "";
    for (const level of ["odd", "bad"])
      for (const part of check.querySelectorAll(`[data-level=${level}]`)) {
        const line = gutter.children[Number(part.dataset.line) - 1];
        if (line) line.className = level;
      }
  }

  function goTo(line) {
    const lines = text.value.split("\n");
    const start = lines.slice(0, line - 1).reduce((sum, other) => sum + other.length + 1, 0);
    text.focus({ preventScroll: true });
    text.setSelectionRange(start, start + (lines[line - 1] ?? "").length);
    gutter.children[line - 1]?.scrollIntoView({ block: "center" });
  }

  // What has not reached the server yet outlives a closed tab on this device.
  function remember() { try { localStorage.setItem(kept, JSON.stringify({ version: version.value, text: text.value })); } catch { /* no room: the server is asked all the same */ } }
  function forget() { try { localStorage.removeItem(kept); } catch { /* nothing was kept */ } }
  function bringBack() {
    try {
      const before = JSON.parse(localStorage.getItem(kept));
      if (!before || before.text === text.value) { forget(); return; }
      version.value = before.version;
      text.value = before.text;
      number();
      save();
      look();
    } catch {
      forget();
    }
  }
})();
