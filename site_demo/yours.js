// Reprices the build with the reader's choices. The arithmetic is the ledger's: the same whole numbers,
// each line rounded once, an exact half away from zero. The address keeps the choices.
"use strict";
(() => {
  const form = document.querySelector("form.yours");
  const held = document.getElementById("lines");
  if (!form || !held) return;
  const data = JSON.parse(held.textContent);
  const answer = form.querySelector("output");

  const halfUp = (top, bottom) => {
    const size = top < 0n ? -top : top;
    const rounded = (2n * size + bottom) / (2n * bottom);
    return top < 0n ? -rounded : rounded;
  };

  // How much of this build's luck is not there, per cent; a machine that is not owned is hired.
  const missing = (source, machine, choice) => {
    const part = 100 - (choice.luck[source] ?? 100);
    return machine >= 0 && data.atMyPrice.includes(source) && part === 0 ? 100 : part;
  };

  const cost = (line, choice) => {
    const [source, machine, spent, gap, reusable, withOwn, scales] = line;
    let amount;
    if (machine >= 0 && choice.owns.has(machine)) {
      amount = BigInt(withOwn);
    } else {
      amount = BigInt(spent) + halfUp(BigInt(gap) * BigInt(missing(source, machine, choice)), 100n);
    }
    if (choice.reuse) amount -= BigInt(reusable);
    return halfUp(amount * BigInt(scales ? choice.size : 100) * BigInt(choice.price), 10000n);
  };

  // Whether the answer rests on a price, or on what a thing costs new, that nobody knows.
  const reached = ([source, machine, unpriced, unvalued], choice) => {
    if (machine >= 0 && choice.owns.has(machine)) return unpriced && data.atMyPrice.includes(source);
    const part = missing(source, machine, choice);
    return (part < 100 && unpriced) || (part > 0 && unvalued);
  };

  const total = (choice) =>
    data.lines.reduce((sum, line) => sum + cost(line, choice), 0n) +
    halfUp(BigInt(data.hours[0]) * BigInt(choice.hour), BigInt(data.hours[1]));

  const money = (minor) => {
    const style = data.money;
    const digits = String(minor < 0n ? -minor : minor).padStart(style.digits + 1, "0");
    let whole = style.digits ? digits.slice(0, -style.digits) : digits;
    const groups = [];
    let size = style.last;
    while (whole.length > size) {
      groups.unshift(whole.slice(-size));
      whole = whole.slice(0, -size);
      size = style.others;
    }
    const body = [whole, ...groups].join(style.group) + (style.digits ? style.decimal + digits.slice(-style.digits) : "");
    return minor < 0n ? style.minusBefore + body + style.minusAfter : style.before + body + style.after;
  };

  const percent = (control) => Math.min(200, Math.max(50, Math.round(Number(control.value)) || 100));

  const chosen = () => ({
    owns: new Set([...form.querySelectorAll("[name=own]:checked")].map((box) => Number(box.value))),
    luck: Object.fromEntries([...form.querySelectorAll("[name=luck]")].map((list) => [list.dataset.source, Number(list.value)])),
    reuse: Boolean(form.elements.reuse && form.elements.reuse.checked),
    price: percent(form.elements.price),
    size: percent(form.elements.size),
    hour: form.elements.hour ? Math.max(0, Math.round(Number(form.elements.hour.value) * 10 ** data.money.digits) || 0) : 0,
  });

  const remember = (choice) => {
    const kept = new URLSearchParams();
    kept.set("own", [...choice.owns].join("."));
    for (const [source, luck] of Object.entries(choice.luck)) if (luck !== 100) kept.set(source, luck);
    if (choice.reuse) kept.set("reuse", 1);
    for (const name of ["price", "size"]) if (choice[name] !== 100) kept.set(name, choice[name]);
    if (choice.hour) kept.set("hour", form.elements.hour.value);
    history.replaceState(null, "", "#" + kept);
  };

  const recall = () => {
    const kept = new URLSearchParams(location.hash.slice(1));
    if (!kept.has("own")) return;
    const owns = kept.get("own").split(".").filter(Boolean);
    for (const box of form.querySelectorAll("[name=own]")) box.checked = owns.includes(box.value);
    for (const list of form.querySelectorAll("[name=luck]")) list.value = kept.get(list.dataset.source) ?? "100";
    if (form.elements.reuse) form.elements.reuse.checked = kept.has("reuse");
    for (const name of ["price", "size"]) form.elements[name].value = kept.get(name) ?? "100";
    if (form.elements.hour) form.elements.hour.value = kept.get("hour") ?? "0";
  };

  const show = () => {
    const choice = chosen();
    const around = data.around[data.unknown.some((line) => reached(line, choice)) ? 1 : 0];
    answer.textContent = around.replace("\n", () => money(total(choice)));
    for (const now of form.querySelectorAll(".now")) now.textContent = now.textContent.replace(/\d+/, choice[now.dataset.of]);
    return choice;
  };

  recall();
  form.hidden = false;
  show();
  form.addEventListener("input", () => remember(show()));
  form.addEventListener("submit", (event) => event.preventDefault());
  addEventListener("hashchange", () => { recall(); show(); });
})();
