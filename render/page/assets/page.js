"use strict";
(function () {
  var job = "job-" + document.body.dataset.job + " ";
  // Storage may be refused for pages opened from a file; the page works without it.
  function get(key) { try { return localStorage.getItem(job + key); } catch (e) { return null; } }
  function put(key, value) {
    try {
      if (value === null) localStorage.removeItem(job + key); else localStorage.setItem(job + key, value);
    } catch (e) { document.getElementById("boxes").textContent = "This browser keeps nothing for this page: ticks are lost when it is closed."; }
  }
  var boxes = document.querySelectorAll("input[data-box]");
  boxes.forEach(function (box) {
    var kept = get(box.dataset.box);
    if (kept !== null) box.checked = kept === "1";
    box.addEventListener("change", function () {
      put(box.dataset.box, box.checked === box.defaultChecked ? null : box.checked ? "1" : "0");
    });
  });
  var forget = document.getElementById("forget");
  if (forget) forget.addEventListener("click", function () {
    boxes.forEach(function (box) { box.checked = box.defaultChecked; put(box.dataset.box, null); });
  });
  var units = document.querySelectorAll("input[name=unit]");
  function show() {
    units.forEach(function (u) { if (u.checked) document.body.dataset.unit = u.value; });
  }
  units.forEach(function (u) {
    if (get("unit") === u.value) u.checked = true;
    u.addEventListener("change", function () { put("unit", u.value); show(); });
  });
  show();
  document.addEventListener("click", function (e) {
    var at = e.target.closest("a.at");
    if (!at) return;
    var video = document.querySelector('video[data-clip="' + Number(at.dataset.clip) + '"]');
    if (!video) return;
    e.preventDefault();
    var second = Number(at.dataset.second);
    function seek() { video.currentTime = second; }
    if (video.readyState > 0) seek(); else { video.addEventListener("loadedmetadata", seek, { once: true }); video.preload = "metadata"; video.load(); }
    video.scrollIntoView({ block: "nearest" });
    video.focus();
  });
})();
