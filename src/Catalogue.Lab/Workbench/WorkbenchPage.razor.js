// Pointers, keys and files of the workbench. What they did goes to the page as small messages; nothing here keeps records.
const inField = target => target instanceof Element && target.closest("input, textarea, select, [contenteditable]") !== null;
const dragFrom = 4;
const uploadsAtOnce = 3;

export function start(root, page, token) {
  const stopping = new AbortController();
  const on = (target, type, handler, options) => target.addEventListener(type, handler, { signal: stopping.signal, ...options });
  const send = (method, ...args) => page.invokeMethodAsync(method, ...args).catch(() => {});
  const marksOf = id => root.querySelectorAll(`[data-callout="${id}"]`);
  const shift = (id, x, y) => marksOf(id).forEach(mark => { mark.style.translate = x || y ? `${x}px ${y}px` : ""; });

  // -- callouts: press, drag, draw ------------------------------------------------------------------------
  let press = null;
  let swallow = false;

  // A press on the photo may come before the page has answered that it is armed: it is armed here at once, and the page says the same a moment later.
  const arm = mode => {
    const photo = root.querySelector(".photo");
    if (!photo) return;
    if (photo.dataset.mode === mode) delete photo.dataset.mode;
    else photo.dataset.mode = mode;
  };
  on(root, "click", event => {
    const button = event.target.closest("button[data-arms]");
    if (button && !button.disabled) arm(button.dataset.arms);
  });

  on(root, "pointerdown", event => {
    const photo = event.target.closest(".photo");
    if (!photo || event.button !== 0) return;
    const mark = event.target.closest("button[data-callout]");
    const mode = photo.dataset.mode;
    if (mode) event.preventDefault();
    else if (!mark) return;
    const box = photo.getBoundingClientRect();
    press = { photo, box, mode, id: mode ? null : mark.dataset.callout, x: event.clientX, y: event.clientY, moved: false };
    (mode ? photo : mark).setPointerCapture(event.pointerId);
  });

  on(root, "pointermove", event => {
    if (!press) return;
    const dx = event.clientX - press.x, dy = event.clientY - press.y;
    press.moved ||= Math.hypot(dx, dy) > dragFrom;
    if (!press.moved) return;
    if (press.id) shift(press.id, dx, dy);
    else if (press.mode === "box") drawn(press, event);
  });

  on(root, "pointerup", async event => {
    if (!press) return;
    const { photo, box, mode, id, moved, x, y, frame } = press;
    press = null;
    frame?.remove();
    const at = (px, py) => [clamp((px - box.left) / box.width), clamp((py - box.top) / box.height)];
    if (id) {
      if (!moved) return;
      swallow = true;
      setTimeout(() => { swallow = false; });
      await send("MoveAsync", id, (event.clientX - x) / box.width, (event.clientY - y) / box.height);
      shift(id, 0, 0);
    } else if (mode === "pin") {
      delete photo.dataset.mode;
      send("PinAsync", ...at(event.clientX, event.clientY));
    } else if (mode === "box" && moved) {
      const [ax, ay] = at(x, y), [bx, by] = at(event.clientX, event.clientY);
      if (ax === bx || ay === by) return;
      delete photo.dataset.mode;
      send("BoxAsync", Math.min(ax, bx), Math.min(ay, by), Math.abs(ax - bx), Math.abs(ay - by));
    }
  });

  on(root, "pointercancel", () => {
    if (press?.id) shift(press.id, 0, 0);
    press?.frame?.remove();
    press = null;
  });
  on(root, "click", event => {
    if (!swallow) return;
    swallow = false;
    event.stopPropagation();
    event.preventDefault();
  }, { capture: true });

  function drawn(held, event) {
    if (!held.frame) {
      held.frame = document.createElement("div");
      held.frame.className = "drawn-box";
      document.body.append(held.frame);
    }
    Object.assign(held.frame.style, {
      left: `${Math.min(held.x, event.clientX)}px`, top: `${Math.min(held.y, event.clientY)}px`,
      width: `${Math.abs(event.clientX - held.x)}px`, height: `${Math.abs(event.clientY - held.y)}px`,
    });
  }

  // -- callouts: arrow keys. Steps add up while the key is held and are sent once ------------------------------
  const steps = new Map();
  const arrows = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

  on(root, "keydown", event => {
    const mark = event.target.closest?.("button[data-callout]");
    if (!mark) return;
    const id = mark.dataset.callout;
    if (event.key === "Delete") {
      event.preventDefault();
      send("DeleteAsync", id);
    } else if (arrows[event.key]) {
      event.preventDefault();
      const far = event.shiftKey ? 10 : 1;
      const step = steps.get(id) ?? { x: 0, y: 0, timer: 0 };
      step.x += arrows[event.key][0] * far;
      step.y += arrows[event.key][1] * far;
      clearTimeout(step.timer);
      step.timer = setTimeout(() => sendSteps(id), 350);
      steps.set(id, step);
      shift(id, step.x, step.y);
    }
  });

  async function sendSteps(id) {
    const step = steps.get(id);
    steps.delete(id);
    const box = root.querySelector(".photo")?.getBoundingClientRect();
    if (!step || !box) return;
    await send("MoveAsync", id, step.x / box.width, step.y / box.height);
    if (!steps.has(id)) shift(id, 0, 0);
  }

  // -- candidates of a marking: Alt and a digit takes one from any field of the row, arrows walk along them -----
  on(root, "keydown", event => {
    if (event.isComposing || !event.target.closest?.("#row-form")) return;
    const list = [...root.querySelectorAll("#row-form .pick button[data-take]")];
    const digit = event.altKey && !event.ctrlKey && !event.metaKey ? /^Digit([1-5])$/.exec(event.code)?.[1] : null;
    const taken = digit && list.find(one => one.dataset.take === digit);
    if (taken) {
      event.preventDefault();
      if (!event.repeat) taken.click();
      return;
    }
    const at = list.indexOf(event.target);
    const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: list.length - 1 }[event.key];
    if (at < 0 || to === undefined) return;
    event.preventDefault();
    list[Math.min(list.length - 1, Math.max(0, to))].focus();
  });

  // -- a row and its balloon light each other ------------------------------------------------------------------
  on(root, "pointerover", event => {
    const number = event.target.closest?.("[data-n]")?.dataset.n;
    root.querySelectorAll("[data-lit]").forEach(lit => delete lit.dataset.lit);
    if (number) root.querySelectorAll(`[data-n="${number}"]`).forEach(part => { part.dataset.lit = "yes"; });
  });

  // -- keys of the page ----------------------------------------------------------------------------------------
  const letters = { p: "pin", b: "box", j: "next", k: "previous" };

  on(document, "keydown", event => {
    if (document.querySelector(".mud-dialog, dialog[open]") || event.isComposing) return;
    if (event.key === "Enter" && event.ctrlKey) {
      event.preventDefault();
      leaveField();
      send("KeyAsync", "save-next");
    } else if (event.key === "Escape") {
      leaveField();
      send("KeyAsync", "close");
    } else if (inField(event.target) || event.ctrlKey || event.altKey || event.metaKey) {
      return;
    } else if (event.key === "/") {
      event.preventDefault();
      document.getElementById("filter")?.focus();
    } else if (event.key.toLowerCase() === "h") {
      root.dataset.bare = "yes";
    } else if (letters[event.key.toLowerCase()] && !event.repeat) {
      event.preventDefault();
      const action = letters[event.key.toLowerCase()];
      if (action === "pin" || action === "box") arm(action);
      send("KeyAsync", action);
    }
  });
  on(document, "keyup", event => { if (event.key.toLowerCase() === "h") delete root.dataset.bare; });
  on(window, "blur", () => { delete root.dataset.bare; });

  // What stands in a field reaches the page when the field is left, so it is left first.
  function leaveField() {
    if (inField(document.activeElement)) document.activeElement.blur();
  }

  // A question mark in a marking stands for a character that could not be made out; it gets a sign of its own, which no part bears.
  on(root, "beforeinput", event => {
    if (event.target.id !== "f-mark" || event.data !== "?") return;
    event.preventDefault();
    event.target.setRangeText("\u25a1", event.target.selectionStart, event.target.selectionEnd, "end");
    event.target.dispatchEvent(new Event("input", { bubbles: true }));
  });

  // -- width of the photo --------------------------------------------------------------------------------------
  const splitter = root.querySelector(".splitter");
  const widthKey = "lab-photo-width";
  const setWidth = percent => {
    const width = Math.round(Math.min(70, Math.max(25, percent)));
    root.style.setProperty("--photo-width", `${width}%`);
    splitter?.setAttribute("aria-valuenow", width);
    localStorage.setItem(widthKey, width);
  };
  if (localStorage.getItem(widthKey)) setWidth(Number(localStorage.getItem(widthKey)));
  if (splitter) {
    on(splitter, "pointerdown", event => splitter.setPointerCapture(event.pointerId));
    on(splitter, "pointermove", event => {
      const box = root.getBoundingClientRect();
      if (splitter.hasPointerCapture(event.pointerId)) setWidth((event.clientX - box.left) / box.width * 100);
    });
    on(splitter, "keydown", event => {
      const by = { ArrowLeft: -2, ArrowRight: 2 }[event.key];
      if (!by) return;
      event.preventDefault();
      setWidth(Number(splitter.getAttribute("aria-valuenow")) + by);
    });
  }

  // -- files ---------------------------------------------------------------------------------------------------
  on(root, "change", event => {
    if (event.target.dataset?.upload) takeIn(event.target, token, root.querySelector(".uploads"), id => send("TakenInAsync", id));
  });

  watchPictures(root, on);

  return {
    focus(selector) {
      const target = root.querySelector(selector);
      target?.focus({ preventScroll: true });
      target?.scrollIntoView({ block: "nearest" });
    },
    stop() {
      steps.forEach(step => clearTimeout(step.timer));
      stopping.abort();
    },
  };
}

// For pages that only take files in.
export function startUploads(root, page, token) {
  const stopping = new AbortController();
  const on = (target, type, handler, options) => target.addEventListener(type, handler, { signal: stopping.signal, ...options });
  on(root, "change", event => {
    if (event.target.dataset?.upload)
      takeIn(event.target, token, root.querySelector(".uploads"), () => page.invokeMethodAsync("TakenInAsync").catch(() => {}));
  });
  watchPictures(root, on);
  return { stop() { stopping.abort(); } };
}

// Renditions are made in the background: a picture just taken in is asked for again until it is there.
function watchPictures(root, on) {
  on(root, "error", event => {
    const image = event.target;
    if (!(image instanceof HTMLImageElement)) return;
    const tries = Number(image.dataset.tries ?? 0);
    if (tries >= 30) return;
    image.dataset.tries = tries + 1;
    setTimeout(() => {
      const address = image.getAttribute("src");
      const set = image.getAttribute("srcset");
      image.removeAttribute("srcset");
      image.src = address;
      if (set) image.srcset = set;
    }, Math.min(3000, 400 + tries * 200));
  }, { capture: true });
}

async function takeIn(input, token, log, done) {
  const files = [...input.files];
  input.value = "";
  let last = null;
  const waiting = files.map(file => {
    const line = document.createElement("p");
    line.textContent = `${file.name}, waiting`;
    log.append(line);
    return { file, line };
  });
  const work = async () => {
    for (let next = waiting.shift(); next; next = waiting.shift()) {
      const answer = await sendFile(input.dataset.upload, token, next.file, words => { next.line.textContent = `${next.file.name}, ${words}`; });
      if (answer.id) {
        last = answer.id;
        next.line.textContent = `${next.file.name}, taken in`;
        setTimeout(() => next.line.remove(), 4000);
      } else {
        next.line.className = "problem";
        next.line.textContent = `${next.file.name}, not taken in: ${answer.problem}`;
        const dismiss = document.createElement("button");
        dismiss.type = "button";
        dismiss.className = "link";
        dismiss.textContent = "Dismiss";
        dismiss.addEventListener("click", () => next.line.remove());
        next.line.append(" ", dismiss);
      }
    }
  };
  await Promise.all(Array.from({ length: Math.min(uploadsAtOnce, files.length) }, work));
  if (last) done(last);
}

// A request object, not fetch: only it tells how much of a body was sent.
function sendFile(address, token, file, say) {
  return new Promise(resolve => {
    const request = new XMLHttpRequest();
    request.open("POST", address);
    request.setRequestHeader("RequestVerificationToken", token);
    request.setRequestHeader("Accept", "application/json");
    request.responseType = "json";
    request.upload.addEventListener("progress", event => {
      if (event.lengthComputable) say(event.loaded < event.total ? `${Math.floor(event.loaded / event.total * 100)} %` : "being checked");
    });
    request.addEventListener("load", () => {
      const answer = request.response ?? {};
      if (request.status >= 200 && request.status < 300 && answer.id) resolve(answer);
      else resolve({ problem: answer.detail ?? answer.title ?? statusWords(request.status) });
    });
    request.addEventListener("error", () => resolve({ problem: "the lab was not reached" }));
    const body = new FormData();
    body.append("file", file);
    request.send(body);
  });
}

export function statusWords(status) {
  switch (status) {
    case 400: return "the request was refused; load the page again";
    case 401: case 403: return "you are not signed in any more, or your role does not allow it";
    case 413: return "the file is too large";
    case 415: return "this kind of file is not taken";
    default: return `the lab answered ${status}`;
  }
}

function clamp(value) {
  return Math.min(1, Math.max(0, value));
}
