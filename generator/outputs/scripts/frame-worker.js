/**
 * Search for a site opened from a folder. A browser refuses workers on file://, so there a worker
 * is a hidden frame: its document has this page's origin and policy, and loads this file, which then plays the
 * worker's side, and the worker's own script. Loaded before the theme's script; does nothing on a server.
 */
(function () {
  "use strict";
  var own = document.currentScript.src;

  /** In the frame: what a worker has and a window has not. @param {Window} page */
  function playWorker(page) {
    document.currentScript.remove(); // the worker finds its languages beside the first script of its document
    window.postMessage = function (message) {
      page.dispatchEvent(new CustomEvent("newel-frame-answer", { detail: { frame: window.name, message: message } }));
    };
    window.importScripts = function () {
      return Promise.all(Array.prototype.map.call(arguments, load));
    };
  }

  /** @param {string} url */
  function load(url) {
    return new Promise(function (done, failed) {
      var script = document.createElement("script");
      script.src = url;
      script.onload = done;
      script.onerror = failed;
      document.head.appendChild(script);
    });
  }

  /** In the page: looks like a worker to who made it. @param {string | URL} url */
  function FrameWorker(url) {
    var target = new EventTarget();
    var frame = document.createElement("iframe");
    var waiting = [];
    frame.hidden = true;
    frame.name = "newel-worker-" + document.querySelectorAll("iframe").length;
    frame.title = "Search";
    frame.srcdoc = '<!doctype html><script src="' + own + '"><\/script><script src="' + url + '"><\/script>';
    function send(message) {
      frame.contentWindow.dispatchEvent(new MessageEvent("message", { data: message }));
    }
    frame.addEventListener("load", function () {
      waiting.splice(0).forEach(send);
      waiting = null;
    });
    window.addEventListener("newel-frame-answer", function (event) {
      if (event.detail.frame === frame.name) target.dispatchEvent(new MessageEvent("message", { data: event.detail.message }));
    });
    target.postMessage = function (message) {
      if (!waiting) return send(message);
      waiting.push(message); // the frame is made when it is first spoken to: an index in parts never needs it
      if (!frame.isConnected) (document.body || document.documentElement).appendChild(frame);
    };
    target.terminate = function () { frame.remove(); };
    return target;
  }

  if (window.parent !== window && window.name.indexOf("newel-worker-") === 0) playWorker(window.parent);
  else if (location.protocol === "file:") window.Worker = window.IFrameWorker = FrameWorker;
})();
