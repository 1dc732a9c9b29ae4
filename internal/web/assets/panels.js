// What is typed into a panel is sent as it is typed, and the newer question takes the place of the older.
// Without this the same forms are submitted whole.

const wait = 180; // ms without a letter, after which somebody has stopped to look
const pending = new WeakMap();

// drinkText is the text that a panel beside a bench works on; a page of its own carries it in the form.
const drinkText = form => form.elements.text ?? document.querySelector("form textarea[name=text]");

const ask = async form => {
	pending.get(form)?.abort();
	const newer = new AbortController();
	pending.set(form, newer);
	const fields = new FormData(form);
	const text = drinkText(form);
	if (form.method === "post" && text) fields.set("text", text.value);
	const query = new URLSearchParams(fields);
	const address = form.method === "post" ? form.action : `${form.action}?${query}`;
	try {
		const answer = await fetch(address, {
			method: form.method, headers: {"Sipsum-Piece": "1"}, signal: newer.signal,
			body: form.method === "post" ? query : undefined,
		});
		const piece = new DOMParser().parseFromString(await answer.text(), "text/html").getElementById(form.dataset.live);
		const place = document.getElementById(form.dataset.live);
		if (piece && place && !newer.signal.aborted) place.replaceChildren(...piece.childNodes);
	} catch (err) {
		if (err.name !== "AbortError") document.getElementById(form.dataset.live)?.replaceChildren("sipsum does not answer: is it still running?");
	}
};

document.addEventListener("input", event => {
	const form = event.target.form;
	if (!form?.dataset.live) return;
	clearTimeout(form.later);
	form.later = setTimeout(ask, wait, form);
});

// A form that was sent is at work until its answer is here.
document.addEventListener("submit", event => {
	const form = event.target;
	if (!form.closest(".panel")) return;
	form.setAttribute("aria-busy", "true");
	addEventListener("pageshow", () => form.removeAttribute("aria-busy"), {once: true}); // back from the next page
});
