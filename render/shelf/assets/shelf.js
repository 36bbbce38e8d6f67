"use strict";
(function () {
  var seek = document.getElementById("seek"), shown = document.getElementById("shown");
  var rows = Array.prototype.slice.call(document.querySelectorAll("[data-seek]"));
  var groups = document.querySelectorAll("[data-group]");
  var texts = rows.map(function (row) {
    var group = row.closest("[data-group]");
    return (row.textContent + " " + (group ? group.querySelector("h2").textContent + " " + (group.querySelector("h2 + p") || { textContent: "" }).textContent : "")).toLowerCase();
  });
  function look() {
    var words = seek.value.toLowerCase().split(/\s+/).filter(Boolean), n = 0;
    rows.forEach(function (row, i) {
      row.hidden = !words.every(function (w) { return texts[i].indexOf(w) >= 0; });
      if (!row.hidden) n++;
    });
    groups.forEach(function (g) { g.hidden = !g.querySelector("[data-seek]:not([hidden])"); });
    shown.textContent = words.length ? n + " of " + rows.length + " shown" : "";
  }
  if (seek) seek.addEventListener("input", look);
  var heads = document.querySelectorAll("th[scope=col]");
  heads.forEach(function (th, column) {
    th.querySelector("button").addEventListener("click", function () {
      var up = th.getAttribute("aria-sort") !== "ascending";
      heads.forEach(function (o) { o.removeAttribute("aria-sort"); });
      th.setAttribute("aria-sort", up ? "ascending" : "descending");
      var body = document.querySelector("table.jobs tbody");
      function key(tr) { var c = tr.children[column]; return c.dataset.order || c.textContent.trim(); }
      Array.prototype.slice.call(body.rows).sort(function (a, b) {
        return (up ? 1 : -1) * key(a).localeCompare(key(b), undefined, { numeric: true });
      }).forEach(function (tr) { body.appendChild(tr); });
    });
  });
})();
