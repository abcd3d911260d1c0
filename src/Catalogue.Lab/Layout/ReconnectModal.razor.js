// The circuit's states come as events and as classes on the dialog; the words for each stand in the markup.
const dialog = document.getElementById("components-reconnect-modal");
const state = name => `components-reconnect-${name}`;

dialog.addEventListener("components-reconnect-state-changed", event => {
  switch (event.detail.state) {
    case "show":
      if (!dialog.open) dialog.showModal();
      break;
    case "hide":
      if (dialog.open) dialog.close();
      break;
    case "failed":
      document.addEventListener("visibilitychange", retryWhenSeen);
      break;
    case "rejected":
      location.reload();
      break;
  }
});
dialog.addEventListener("cancel", event => event.preventDefault());
document.getElementById("components-reconnect-button").addEventListener("click", retry);
document.getElementById("components-resume-button").addEventListener("click", resume);
document.getElementById("components-reload-button").addEventListener("click", () => location.reload());

async function retry() {
  document.removeEventListener("visibilitychange", retryWhenSeen);
  try {
    // False: the server is there, the circuit is not (a restart, or too long away). Then its kept state, then a fresh page.
    if (await Blazor.reconnect()) return;
    if (await Blazor.resumeCircuit()) dialog.close();
    else location.reload();
  } catch {
    document.addEventListener("visibilitychange", retryWhenSeen);
  }
}

async function resume() {
  try {
    if (!await Blazor.resumeCircuit()) location.reload();
  } catch {
    dialog.classList.replace(state("paused"), state("resume-failed"));
  }
}

function retryWhenSeen() {
  if (document.visibilityState === "visible") retry();
}
