// Makes the taps of an answer sheet without a journey to the server, and saves them quietly where the sheet says so.
// Every tap does the same as the form's own buttons do without this script.
(() => {
  "use strict";

  // A glove often taps twice: a second tap on the same step so soon is not meant.
  const doubleTap = 400;

  for (const form of document.querySelectorAll("form[data-answer-sheet]")) begin(form);
  for (const form of document.querySelectorAll("form[data-choice-sheet]")) beginFields(form);

  // A sheet of options and typed fields: the browser does it all, only the saving is ours.
  function beginFields(form) {
    const ofAnswer = new Set(["sheet", "option", "value", "decision"]);
    const saver = saverOf(form, () => [...new FormData(form)].filter(([name]) => ofAnswer.has(name)));
    form.addEventListener("input", () => saver?.changed());
    form.addEventListener("submit", event => leaveOrStay(form, event, saver));
    saver?.restore(fields => {
      for (const input of form.querySelectorAll("input[type=radio], input[type=checkbox]"))
        input.checked = fields.some(([name, value]) => name === input.name && value === input.value);
      for (const input of form.querySelectorAll("input[name=value]"))
        input.value = fields.find(([name]) => name === "value")?.[1] ?? "";
    });
  }

  function leaveOrStay(form, event, saver) {
    if (navigator.onLine) {
      saver?.leave();
      return;
    }
    event.preventDefault();
    form.querySelector("[data-save-word]").textContent = form.dataset.wordOffline;
  }

  function begin(form) {
    const placed = form.querySelector(".placed");
    const template = form.querySelector("template");
    const none = form.querySelector(".placed-none");
    const count = form.querySelector("[data-count]");
    const said = form.querySelector("[data-change-word]");
    const before = Number(form.dataset.before || 0);
    const saver = saverOf(form, () => [["sheet", "order"], ...rows().flatMap(row => [
      ["step", row.dataset.placed],
      ["seconds", row.querySelector("input[name=seconds]").value],
    ])]);
    let last = { step: "", at: 0 };

    form.addEventListener("click", event => {
      const button = event.target.closest("button[name=change]");
      if (!button) return;
      event.preventDefault();
      if (button.dataset.step) {
        const twice = last.step === button.dataset.step && event.timeStamp - last.at < doubleTap;
        last = { step: button.dataset.step, at: event.timeStamp };
        if (twice && event.detail > 0) return;
        toggle(button);
      } else {
        move(button.closest("li"), button.dataset.move || button.value.split(":")[0]);
      }
      draw();
      saver?.changed();
    });
    form.addEventListener("input", event => { if (event.target.name === "seconds") saver?.changed(); });
    form.addEventListener("keydown", event => {
      if (event.key === "Enter" && event.target.name === "seconds") event.preventDefault();
    });
    form.addEventListener("submit", event => leaveOrStay(form, event, saver));
    saver?.restore(fields => {
      for (const row of rows()) row.remove();
      const [steps, times] = ["step", "seconds"].map(wanted => fields.filter(([name]) => name === wanted).map(([, value]) => value));
      for (const [index, id] of steps.entries()) {
        const seconds = times[index];
        const button = form.querySelector(`.offered button[data-step="${CSS.escape(id)}"]`);
        if (button) add(button, seconds);
      }
      draw();
    });

    function rows() { return [...placed.querySelectorAll("li[data-placed]")]; }

    function say(word, ...parts) { said.textContent = parts.reduce((text, part, at) => text.replace(`{${at}}`, part), word); }

    function toggle(button) {
      const row = rows().find(item => item.dataset.placed === button.dataset.step);
      const text = button.querySelector(".text").textContent;
      if (row) {
        row.remove();
        say(form.dataset.wordTaken, text);
      } else {
        add(button, "");
        say(form.dataset.wordPlaced, rows().length + before, text);
      }
    }

    function add(button, seconds) {
      const row = template.content.firstElementChild.cloneNode(true);
      const text = button.querySelector(".text").textContent;
      row.dataset.placed = button.dataset.step;
      row.id = `place-${button.dataset.step}`;
      row.querySelector(".text").textContent = text;
      row.querySelector("input[name=step]").value = button.dataset.step;
      for (const mover of row.querySelectorAll("[data-move]"))
        mover.setAttribute("aria-label", mover.dataset.label.replace("{0}", text));
      const wait = row.querySelector(".how-long");
      if (button.dataset.wait) {
        const input = wait.querySelector("input");
        input.id = `how-long-${button.dataset.step}`;
        input.value = seconds;
        wait.querySelector("label").htmlFor = input.id;
      } else {
        const empty = document.createElement("input");
        empty.type = "hidden";
        empty.name = "seconds";
        wait.replaceWith(empty);
      }
      placed.append(row);
    }

    // The row stays under the finger while the list moves past it, so that a second tap moves the same step again.
    function move(row, way) {
      const other = way === "up" ? row.previousElementSibling : row.nextElementSibling;
      if (!other || !other.dataset.placed) return;
      const top = row.getBoundingClientRect().top;
      if (way === "up") other.before(row); else other.after(row);
      scrollBy({ top: row.getBoundingClientRect().top - top, behavior: "instant" });
      say(form.dataset.wordPlaced, rows().indexOf(row) + 1 + before, row.querySelector(".text").textContent);
      const button = row.querySelectorAll(".moves button")[way === "up" ? 0 : 1];
      requestAnimationFrame(() =>
        (button.disabled ? row.querySelector(".moves button:not(:disabled)") : button)?.focus({ preventScroll: true }));
    }

    function draw() {
      const places = new Map();
      rows().forEach((row, index, all) => {
        places.set(row.dataset.placed, index + 1);
        row.querySelector(".place").textContent = index + 1 + before;
        const [up, down] = row.querySelectorAll(".moves button");
        up.value = `up:${index + 1}`;
        down.value = `down:${index + 1}`;
        up.disabled = index === 0;
        down.disabled = index === all.length - 1;
      });
      none.hidden = places.size > 0;
      count.textContent = places.size + before;
      for (const button of form.querySelectorAll(".offered button")) {
        const place = places.get(button.dataset.step);
        button.parentElement.classList.toggle("is-placed", Boolean(place));
        button.setAttribute("aria-pressed", place ? "true" : "false");
        button.value = `${place ? "back" : "place"}:${button.dataset.step}`;
        button.querySelector(".place").textContent = place ? place + before : "";
      }
    }
  }

  function saverOf(form, fields) {
    if (form.dataset.saveAddress) return saving(form, fields);
    return form.dataset.keptAs ? keeping(form.dataset.keptAs, fields) : null;
  }

  // An answer that nobody saves stays on this device until it is handed in: a phone that drops the page loses nothing.
  function keeping(key, fields) {
    const longest = 24 * 60 * 60 * 1000;

    function read(name) {
      try {
        return JSON.parse(localStorage.getItem(name) ?? "null");
      } catch {
        return null;
      }
    }

    function changed() {
      try {
        const kind = `${key.split(":")[0]}:`;
        for (const name of Object.keys(localStorage))
          if (name.startsWith(kind) && !(Date.now() - read(name)?.at < longest)) localStorage.removeItem(name);
        localStorage.setItem(key, JSON.stringify({ at: Date.now(), fields: fields() }));
      } catch {
        // A browser that keeps nothing has the answer as long as the page is open.
      }
    }

    // Where the page shows the same already it stays as it is, with what it says about a field.
    function restore(put) {
      const kept = read(key);
      if (kept && JSON.stringify(kept.fields) !== JSON.stringify(fields())) put(kept.fields);
    }

    return { changed, restore, leave() {} };
  }

  // Keeps the newest answer on this device until the server has it. Each save says which saves it was made from: the one
  // that the page showed, and those that were sent and not heard of; what somebody else saved meanwhile is not overwritten.
  function saving(form, fields) {
    const word = form.querySelector("[data-save-word]");
    const number = form.querySelector("input[name=saveNumber]");
    const made = form.querySelector("input[name=madeFrom]");
    const another = form.querySelector("[data-another-held]");
    const address = form.dataset.saveAddress;
    let timer = 0;
    let busy = false;
    let leaving = false;
    let unsent = false;
    let refused = false;
    let held = another.hidden ? null : Number(form.dataset.saveNumber);

    addEventListener("online", send);
    // A page that the browser kept and shows again may be older than what the server holds.
    addEventListener("pageshow", event => { if (event.persisted) location.reload(); });
    setInterval(send, 5000);
    another.querySelector("[data-keep-mine]").addEventListener("click", keepMine);
    another.querySelector("[data-take-saved]").addEventListener("click", () => keptAnswers.remove(address));

    function keep() { keptAnswers.write(address, { number: number.value, madeFrom: made.value.split(","), fields: fields() }); }

    function changed() {
      number.value = String(Math.max(Number(number.value) + 1, Date.now()));
      [unsent, refused] = [true, false];
      keep();
      if (held !== null) return;
      word.textContent = form.dataset.wordSaving;
      clearTimeout(timer);
      timer = setTimeout(send, 300);
    }

    async function send() {
      if (!unsent || busy || leaving || refused || held !== null) return;
      busy = true;
      const sent = number.value;
      const body = new URLSearchParams(new FormData(form));
      made.value = `${made.value},${sent}`;
      keep();
      try {
        const answer = await keptAnswers.post(address, body);
        if (answer.ok) {
          made.value = String((await answer.json()).counter);
          if (number.value === sent) {
            unsent = false;
            // Another page at the same question may keep another answer here by now.
            if (keptAnswers.read(address)?.number === sent) keptAnswers.remove(address);
            word.textContent = form.dataset.wordSaved;
          } else {
            keep();
            setTimeout(send, 0);
          }
        } else if (answer.type === "opaqueredirect" || answer.status === 400) {
          word.textContent = form.dataset.wordSignedOut;
        } else if (answer.status === 409) {
          choose((await answer.json()).held);
        } else if (answer.status === 410) {
          keptAnswers.remove(address);
          location.reload();
        } else {
          refused = answer.status === 422 && number.value === sent;
          word.textContent = (await answer.json().catch(() => null))?.detail ?? form.dataset.wordWaiting;
        }
      } catch {
        word.textContent = form.dataset.wordWaiting;
      } finally {
        busy = false;
      }
    }

    // Another page has saved another answer: what is on this one stays, and nothing is sent before somebody has chosen.
    function choose(counter) {
      held = counter;
      keep();
      word.textContent = "";
      another.hidden = false;
      another.scrollIntoView({ block: "nearest" });
    }

    function keepMine(event) {
      event.preventDefault();
      if (held === null) return;
      made.value = String(held);
      number.value = String(Math.max(Number(number.value), held) + 1);
      held = null;
      [unsent, refused] = [true, false];
      another.hidden = true;
      keep();
      word.textContent = form.dataset.wordSaving;
      send();
    }

    function restore(put) {
      const order = keptAnswers.read(address);
      if (!order) return;
      if (order.number === form.dataset.saveNumber) {
        keptAnswers.remove(address);
        return;
      }
      unsent = true;
      put(order.fields);
      number.value = order.number;
      made.value = order.madeFrom.join(",");
      if (order.madeFrom.includes(form.dataset.saveNumber)) send();
      else choose(Number(form.dataset.saveNumber));
    }

    // The form's own post saves the same answer under the next number.
    function leave() {
      leaving = true;
      const order = keptAnswers.read(address);
      if (order) keptAnswers.write(address, { ...order, number: String(Number(number.value) + 1) });
    }

    return { changed, restore, leave };
  }
})();
