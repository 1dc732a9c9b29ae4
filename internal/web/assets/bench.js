// What is typed or turned on the bench is sent to the server, and the pieces of the page that come back take the place of
// those that are there. Without this the same form is submitted whole.

const form = document.getElementById("bench");
const text = document.getElementById("text");
const wait = 220; // ms without a letter, after which a text is calculated
const far = 10; // steps of a dial for a page key, or with shift

let saved = "unsaid" in text.dataset ? null : text.value; // null: the page began with more than is saved
let asking; // the newest question, which ends older ones
let later;

document.documentElement.classList.add("scripted");

// numbers stand beside the rows; those of faults are marked, and the fault stands under the row that it is in.
const numbers = document.createElement("pre");
numbers.className = "rows";
numbers.setAttribute("aria-hidden", "true");
text.before(numbers);
const under = document.createElement("p");
under.className = "under";
under.setAttribute("aria-hidden", "true"); // the list above says the same
under.hidden = true;
text.after(under);
let faults = [];

const showFaults = () => {
	const rows = text.value.split("\n");
	const at = new Set(faults.map(f => f.line));
	numbers.replaceChildren(...rows.flatMap((_, i) => {
		const n = at.has(i + 1) ? document.createElement("b") : document.createTextNode(String(i + 1));
		if (at.has(i + 1)) n.textContent = String(i + 1);
		return [n, document.createTextNode("\n")];
	}));
	text.rows = rows.length;
	const first = faults.find(f => f.line > 0);
	under.hidden = !first;
	if (first) {
		const row = parseFloat(getComputedStyle(text).lineHeight);
		under.textContent = first.what;
		under.style.setProperty("top", `${parseFloat(getComputedStyle(text).paddingTop) + first.line * row}px`);
	}
	text.setAttribute("aria-invalid", String(faults.length > 0));
};

// goTo puts the caret where a fault is.
const goTo = (line, col) => {
	const rows = text.value.split("\n");
	const from = rows.slice(0, line - 1).reduce((n, row) => n + row.length + 1, 0);
	const at = from + [...(rows[line - 1] ?? "")].slice(0, Math.max(col - 1, 0)).join("").length;
	text.focus();
	text.setSelectionRange(at, at);
	const top = text.getBoundingClientRect().top + line * parseFloat(getComputedStyle(text).lineHeight);
	if (top < 60 || top > innerHeight - 60) scrollBy(0, top - innerHeight / 2);
};

// nameOf finds what has the focus again after its piece came anew.
const nameOf = el => el?.dataset?.path ? ["path", el.dataset.path] : el?.name === "step" ? ["step", el.value] : el?.id && el.id !== "text" ? ["id", el.id] : null;
const named = ([kind, name]) => kind === "id" ? document.getElementById(name)
	: [...document.querySelectorAll(kind === "path" ? "input[data-path]" : "button[name=step]")].find(el => (kind === "path" ? el.dataset.path : el.value) === name);

// whose tells the details of one pot or sense from those of another.
const whose = details => details.dataset.sense ?? `pot ${details.closest("[data-pot]").dataset.pot}`;

// turnTo sets the dials to what is written while the file has faults: what its foods are called nobody looks up then.
const turnTo = html => {
	const now = new DOMParser().parseFromString(html, "text/html");
	const there = new Map([...document.querySelectorAll("#pots input[data-path]")].map(el => [el.dataset.path, el]));
	for (const el of now.querySelectorAll("input[data-path]")) there.get(el.dataset.path)?.closest(".st").replaceWith(el.closest(".st"));
};

// take puts an answer into the page.
export const take = answer => {
	const next = answer.text.replaceAll("\r\n", "\n");
	if (text.value !== next) {
		const {selectionStart, selectionEnd} = text;
		text.value = next;
		if (document.activeElement === text) text.setSelectionRange(selectionStart, selectionEnd);
	}
	const focus = nameOf(document.activeElement);
	const open = new Set([...document.querySelectorAll("#pots details[open], #brief details[open]")].map(whose));
	for (const [id, html] of Object.entries(answer.pieces)) {
		const place = document.getElementById(id);
		if (id === "pots" && answer.faults.length > 0 && place.firstElementChild) {
			turnTo(html);
		} else if (place) {
			place.innerHTML = html;
		}
	}
	for (const details of document.querySelectorAll("#pots details, #brief details")) details.open = open.has(whose(details));
	if (focus && !document.activeElement?.matches("input, button, textarea, summary")) named(focus)?.focus();
	faults = answer.faults;
	document.getElementById("brief").classList.toggle("old", faults.length > 0);
	showFaults();
};

const say = words => {
	const p = document.createElement("p");
	p.setAttribute("role", "alert");
	p.className = "bad small";
	p.textContent = words;
	document.getElementById("state").replaceChildren(p);
};

// change asks for a change of the text, or for none: then it is only calculated. It is false if something newer has been
// asked meanwhile.
export const change = async fields => {
	clearTimeout(later);
	asking?.abort();
	const mine = asking = new AbortController();
	const query = new URLSearchParams(fields);
	if (!query.has("text")) query.set("text", text.value);
	query.set("base", form.elements.base.value);
	const sent = text.value;
	try {
		const answer = await fetch(form.action, {method: "POST", headers: {"Sipsum-Piece": "1"}, body: query, signal: mine.signal});
		if (!answer.headers.get("Content-Type")?.startsWith("application/json")) {
			const page = new DOMParser().parseFromString(await answer.text(), "text/html");
			say(page.querySelector("main")?.textContent.trim().replace(/\s+/g, " ") || "this could not be done");
			return true;
		}
		const body = await answer.json();
		if (mine.signal.aborted) return false;
		if (text.value === sent) {
			take(body);
		} else { // more was typed meanwhile
			later = setTimeout(change, wait, {});
		}
	} catch (err) {
		if (err.name === "AbortError") return false;
		say("sipsum does not answer: is it still running? What you typed is still here.");
	}
	return true;
};

text.addEventListener("input", () => {
	showFaults();
	clearTimeout(later);
	later = setTimeout(change, wait, {});
});

// An amount or a reading that was typed is written when it is left, or on return.
document.addEventListener("change", event => {
	const el = event.target;
	if (el.form === form && /^(set|read)\|/.test(el.name) && !logs(el)) change({[el.name]: el.value});
});

// logs tells whether what was read of a pot goes into the log: then it waits for its button.
const logs = el => el.closest("details.reading")?.querySelector("[name=log]")?.checked;

// writeDown sends what was read of a pot to the log.
const writeDown = details => change(Object.fromEntries([...details.querySelectorAll("input, select")].filter(el => el.type !== "checkbox" || el.checked).map(el => [el.name, el.value])));

// turn asks for a turn of a dial. Presses that come faster than answers add up.
let turning = 0, turningOf = "";
const turn = (path, by) => {
	if (turningOf !== path) turning = 0;
	turningOf = path;
	turning = Math.max(-100, Math.min(100, turning + by));
	const asked = turning;
	change({step: `${asked} ${path}`}).then(newest => { if (newest && turningOf === path) turning = 0; });
};

form.addEventListener("submit", event => {
	const by = event.submitter;
	if (by?.name === "step") {
		event.preventDefault();
		const cut = by.value.indexOf(" ");
		turn(by.value.slice(cut + 1), Number(by.value.slice(0, cut)) * (shifted ? far : 1));
	} else if (by?.hasAttribute("data-read") && logs(by)) {
		event.preventDefault();
		writeDown(by.closest("details"));
	} else if (by?.hasAttribute("data-save")) {
		saved = text.value; // whoever saves leaves nothing behind
	} else if (!by?.dataset.piece) {
		event.preventDefault(); // return in a field: it is written by its change
		document.activeElement?.dispatchEvent(new Event("change", {bubbles: true}));
	}
});

let shifted = false;
document.addEventListener("click", event => { shifted = event.shiftKey; }, true);
document.addEventListener("keydown", event => {
	const steps = {ArrowUp: 1, ArrowDown: -1, PageUp: far, PageDown: -far}[event.key];
	if (steps && event.target.dataset?.path && !event.altKey && !event.ctrlKey && !event.metaKey) {
		event.preventDefault();
		turn(event.target.dataset.path, steps);
	} else if (event.key === "F8" && faults.some(f => f.line > 0)) {
		event.preventDefault();
		const line = text.value.slice(0, text.selectionStart).split("\n").length;
		const here = document.activeElement === text;
		const next = faults.find(f => f.line > (here ? line : 0)) ?? faults.find(f => f.line > 0);
		goTo(next.line, next.col);
	} else if (event.key === "s" && (event.ctrlKey || event.metaKey)) {
		event.preventDefault();
		form.requestSubmit(document.querySelector("[data-save]"));
	}
});
document.addEventListener("click", event => {
	const to = event.target.closest("[data-line]");
	if (!to) return;
	event.preventDefault();
	goTo(Number(to.dataset.line), Number(to.dataset.col));
});
addEventListener("beforeunload", event => { if (text.value !== saved) event.preventDefault(); });

// A page that came with faults shows them in the file too.
faults = [...document.querySelectorAll("#faults [data-line]")].map(a => ({
	line: Number(a.dataset.line), col: Number(a.dataset.col), what: a.parentElement.querySelector("bdi").textContent, do: a.parentElement.querySelector(".do")?.textContent ?? "",
}));
showFaults();
