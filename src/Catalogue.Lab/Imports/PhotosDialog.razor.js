// Sends files that were chosen: one by one to their places, or one file as an import run. Bytes never go through the circuit.
const atOnce = 3;
const namesAtOnce = 60;

export function open(input, page, token) {
  let files = [];
  return {
    // The names go over in portions: one message of the circuit holds little. True where what was chosen is one zip file.
    async list() {
      files = [...input.files];
      if (files.length === 1 && /\.zip$/i.test(files[0].name)) return true;
      const names = files.map(file => (file.webkitRelativePath || file.name).slice(-400));
      for (let at = 0; at < names.length; at += namesAtOnce)
        await page.invokeMethodAsync("Named", names.slice(at, at + namesAtOnce));
      return false;
    },

    async send(places) {
      const waiting = [...places];
      const work = async () => {
        for (let next = waiting.shift(); next; next = waiting.shift()) {
          const answer = await post(next.address, token, {}, files[next.index]);
          await page.invokeMethodAsync("Sent", next.index, answer.problem ?? null, answer.already_there === true).catch(() => {});
        }
      };
      await Promise.all(Array.from({ length: Math.min(atOnce, waiting.length) }, work));
    },

    async sendRun(address, fields) {
      const answer = await post(address, token, fields, files[0] ?? input.files[0]);
      return { id: answer.id ?? null, problem: answer.problem ?? null };
    },
  };
}

// Fields stand in front of the file, so that they are read before it.
async function post(address, token, fields, file) {
  if (!file) return { problem: "no file was chosen" };
  const body = new FormData();
  for (const [name, text] of Object.entries(fields)) body.append(name, text);
  body.append("file", file);
  try {
    const response = await fetch(address, { method: "POST", body, headers: { RequestVerificationToken: token, Accept: "application/json" } });
    const answer = await response.json().catch(() => ({}));
    return response.ok ? answer : { problem: (answer.detail ?? answer.title ?? `the lab answered ${response.status}`).slice(0, 600) };
  } catch {
    return { problem: "the lab was not reached" };
  }
}
