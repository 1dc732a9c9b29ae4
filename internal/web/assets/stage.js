// The clock of the stage: minutes and seconds since somebody began to speak.

for (const clock of document.querySelectorAll("[data-clock]")) {
	const shown = clock.querySelector("output"), button = clock.querySelector("button");
	let began = 0, ticking = 0;
	const show = () => {
		const s = Math.floor((performance.now() - began) / 1000);
		shown.value = `${Math.floor(s / 60)}:${String(s % 60).padStart(2, "0")}`;
	};
	clock.hidden = false;
	button.addEventListener("click", () => {
		if (ticking) {
			clearInterval(ticking);
			ticking = 0;
			button.textContent = "Start again";
			return;
		}
		began = performance.now();
		show();
		ticking = setInterval(show, 250);
		button.textContent = "Stop";
	});
}
