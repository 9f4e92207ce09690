// What this device keeps of a person's answers until the server has them: each under the address where it is saved, with
// who made it and when its paper ends. Nobody else's are read, and none stays longer than its paper.
(() => {
  "use strict";

  const start = "answer:";
  const me = document.currentScript.dataset.person;
  const patience = 3000;

  for (const [key, entry] of all()) if (!entry?.who || entry.until < Date.now()) drop(key);
  for (const done of document.querySelectorAll("[data-forget]")) for (const address of mine(done.dataset.forget)) remove(address);
  for (const form of document.querySelectorAll('form[action="/sign-out"]')) form.addEventListener("submit", leave);

  function all() {
    try {
      return Object.keys(localStorage).filter(key => key.startsWith(start)).map(key => [key, parse(localStorage.getItem(key))]);
    } catch {
      return [];
    }
  }

  function parse(text) {
    try {
      return JSON.parse(text);
    } catch {
      return null;
    }
  }

  function drop(key) {
    try {
      localStorage.removeItem(key);
    } catch {
      // A browser that keeps nothing has nothing to drop.
    }
  }

  function mine(prefix) {
    return all().filter(([key, entry]) => entry?.who === me && key.startsWith(start + prefix)).map(([key]) => key.slice(start.length));
  }

  function read(address) {
    const entry = all().find(([key]) => key === start + address)?.[1];
    return entry?.who === me ? entry : null;
  }

  function write(address, entry) {
    try {
      localStorage.setItem(start + address, JSON.stringify({ ...entry, who: me, until: entry.until ?? paperEnds() }));
    } catch {
      // A browser that keeps nothing still sends; only a lost connection then loses what it could not send.
    }
  }

  function remove(address) { drop(start + address); }

  function paperEnds() {
    return Date.now() + Number(document.querySelector("[data-paper-clock]")?.dataset.left ?? 0) * 1000;
  }

  function post(address, body) {
    return fetch(address, { method: "POST", body, headers: { Accept: "application/json" }, redirect: "manual" });
  }

  // Sends what is kept for an address, with the token of a form; whoever calls decides what comes of the answer.
  function send(address, form) {
    const entry = read(address);
    const body = new URLSearchParams(new FormData(form));
    body.set("saveNumber", entry.number);
    body.set("madeFrom", entry.madeFrom.join(","));
    for (const [name, value] of entry.fields) body.append(name, value);
    return post(address, body);
  }

  // Whoever signs out leaves nothing that can still be sent; what cannot stays theirs until their paper ends.
  async function leave(event) {
    const kept = mine("");
    if (kept.length === 0) return;
    event.preventDefault();
    const form = event.target;
    const sent = kept.map(async address => {
      const answer = await send(address, form);
      if (answer.ok || answer.status === 410) remove(address);
    });
    await Promise.race([Promise.allSettled(sent), new Promise(resolve => setTimeout(resolve, patience))]);
    form.submit();
  }

  window.keptAnswers = { mine, read, write, remove, post, send };
})();
