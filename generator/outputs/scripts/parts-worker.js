/**
 * Answers the theme's search box in the worker's stead where the index was cut into parts, in the worker's own
 * words, so that box, results and what is read aloud stay the theme's. Loaded behind frame-worker. An index in
 * one piece goes to the theme's worker as ever.
 */
(function () {
  "use strict";
  const own = document.currentScript.src;

  /** @param {any} config of the index @returns {Promise<(query: string, wanted: () => boolean) => Promise<any[][]>>} */
  function open(config) {
    return new Promise((done, failed) => {
      const script = document.createElement("script");
      script.src = new URL("newel-search-parts.js", own).href;
      script.onload = () => done(window.newelOpenParts(config));
      script.onerror = () => failed(new Error("The search could not read " + script.src));
      document.head.appendChild(script);
    });
  }

  /** A worker that hands an index in parts to us. @param {Worker} worker */
  function answered(worker) {
    const send = worker.postMessage.bind(worker);
    let search = null, turn = 0;
    const tell = (data) => worker.dispatchEvent(new MessageEvent("message", { data }));
    worker.postMessage = function (message, ...rest) {
      const config = message?.data?.config;
      if (config?.parts) {
        search = open(config);
        search.then(() => tell({ type: 1 }));
      } else if (search) {
        const mine = (turn += 1); // an answer that comes late is not wanted any more
        const wanted = () => mine === turn;
        search.then((ask) => ask(message.data, wanted)).then((items) => wanted() && tell({ type: 3, data: { items } }));
      } else send(message, ...rest);
    };
    return worker;
  }

  const Plain = window.Worker;
  window.Worker = function (url, options) { return answered(new Plain(url, options)); };
  window.Worker.prototype = Plain.prototype;
})();
