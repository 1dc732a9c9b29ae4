// Links and forms marked data-piece open in the panel beside the bench (panel), or change the drink (edit). On a page without
// a bench they go where they say.

const panel = document.getElementById("panel");
const text = document.getElementById("text");
let asking;

const show = async (address, options = {}) => {
	asking?.abort();
	const mine = asking = new AbortController();
	panel.setAttribute("aria-busy", "true");
	try {
		const answer = await fetch(address, {...options, headers: {"Sipsum-Piece": "1"}, signal: mine.signal});
		const body = await answer.text();
		if (mine.signal.aborted) return;
		const page = new DOMParser().parseFromString(body, "text/html");
		panel.replaceChildren(...(page.querySelector("main") ?? page.body).childNodes);
		panel.focus({preventScroll: true});
		const box = panel.getBoundingClientRect();
		if (box.top < 0 || box.top > innerHeight - 80) panel.scrollIntoView({block: "start"});
	} catch (err) {
		if (err.name !== "AbortError") panel.textContent = "sipsum does not answer: is it still running?";
	} finally {
		panel.removeAttribute("aria-busy");
	}
};

if (panel && text) {
	const {change} = await import("./bench.js");
	document.addEventListener("click", event => {
		const link = event.target.closest("a[data-piece=panel]");
		if (!link || event.ctrlKey || event.metaKey || event.shiftKey || event.button !== 0) return;
		event.preventDefault();
		// What a drink page is asked for, it is asked for the text as it is typed.
		if (new URL(link.href).pathname.startsWith(location.pathname + "/")) {
			show(link.href, {method: "POST", body: new URLSearchParams({text: text.value, base: document.getElementById("bench").elements.base.value})});
		} else {
			show(link.href);
		}
	});
	document.addEventListener("submit", event => {
		const by = event.submitter, form = event.target;
		const kind = by?.dataset.piece ?? form.dataset.piece;
		if (!kind) return;
		event.preventDefault();
		const fields = new URLSearchParams(form.id === "bench" ? {} : new FormData(form, by));
		if (kind === "edit") {
			change(fields);
			return;
		}
		const address = by?.hasAttribute("formaction") ? by.formAction : form.action;
		if (form.method !== "post") {
			show(`${address}?${fields}`);
			return;
		}
		if (!fields.has("text") || form.id === "bench") fields.set("text", text.value);
		fields.set("base", document.getElementById("bench").elements.base.value);
		show(address, {method: "POST", body: fields});
	});
}
