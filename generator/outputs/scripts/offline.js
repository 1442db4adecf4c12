/** On a server: keeps the site on the device, and says so when a newer copy has come. In a folder: nothing to do. */
import { make } from "./dom.js";
import { notice } from "./notices.js";

let offlineStarted = false;

/** Only where the build has written a worker, and not in the preview; its address stands in the page's head. */
export function startOffline() {
  const worker = document.querySelector('meta[name="newel-offline"]');
  const preview = document.querySelector('script[src*="_newel/"]');
  if (offlineStarted || !worker || preview || !location.protocol.startsWith("http")) return;
  offlineStarted = true;
  const address = new URL(worker.content, location.href);
  document.head.append(make("link", { rel: "manifest", href: new URL("newel.webmanifest", address).href }));
  if (!navigator.serviceWorker) return;
  let kept = Boolean(navigator.serviceWorker.controller);
  navigator.serviceWorker.addEventListener("controllerchange", () => {
    if (kept) notice("A newer copy of these pages has come", "What you read may have changed. ", [make("a", { href: location.href, text: "Read the newest", onclick: (event) => { event.preventDefault(); location.reload(); } })]);
    kept = true;
  });
  navigator.serviceWorker.register(address, { updateViaCache: "none" }).then((found) => found.update()).catch(() => {
    /* a browser in private mode, or no network: the pages work as they came */
  });
}
