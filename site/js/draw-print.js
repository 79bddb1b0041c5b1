// The drawing printed true to scale, as any sheet is: in the place of the page's own sheet, for as long as it takes.

const FRAMES = ["sheet-page", "figure", "sheet", "paper-scroll"]; // as the page's own sheet stands in it (print.css)

/**
 * @param {Element} picture in mm
 * @param {string} page the key of its paper
 */
export function printPicture(picture, page) {
  document.querySelector(".draw-print")?.remove();
  const paper = document.createElement("div");
  paper.className = "paper";
  paper.dataset.page = page;
  paper.append(picture);
  const whole = FRAMES.reduceRight((inside, name) => {
    const frame = document.createElement("div");
    frame.className = name;
    frame.append(inside);
    return frame;
  }, paper);
  whole.classList.add("draw-print");
  document.body.append(whole);
  addEventListener("afterprint", () => whole.remove(), { once: true });
  window.print();
}
