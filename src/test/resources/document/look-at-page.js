// What is wrong with the page as it is shown, a line each.
(() => {
  const faults = new Set();
  const name = e => `<${e.tagName.toLowerCase()} class="${e.getAttribute('class') || ''}"> ${(e.textContent || '').trim().slice(0, 40)}`;
  const root = document.documentElement;

  if (!['en', 'es'].includes(root.lang)) faults.add(`language '${root.lang}'`);
  if (!document.title.trim()) faults.add('no title');

  if (root.scrollWidth > innerWidth) faults.add(`page ${root.scrollWidth} px wide`);
  const scrolls = e => e && e !== root && e !== document.body
      && (['auto', 'scroll'].includes(getComputedStyle(e).overflowX) || scrolls(e.parentElement));
  for (const e of document.body.querySelectorAll('*')) {
    const box = e.getBoundingClientRect();
    if (box.width > 0 && (box.right > innerWidth + 1 || box.left < -1) && !e.closest('svg svg, defs') && !scrolls(e.parentElement))
      faults.add(`beyond the window, ${Math.round(box.left)} to ${Math.round(box.right)}: ${name(e)}`);
  }
  for (const e of document.querySelectorAll('td, th, p, dd, dt, li'))
    if (e.clientWidth > 0 && e.scrollWidth > e.clientWidth + 1) faults.add(`words run out of: ${name(e)}`);

  const articles = document.querySelectorAll('article').length;
  const expected = articles > 1 ? articles + 1 : 1;
  const firsts = document.querySelectorAll('h1').length;
  if (firsts !== expected) faults.add(`${firsts} h1 where ${expected} belong`);
  let before = 0;
  for (const h of document.querySelectorAll('h1, h2, h3, h4, h5, h6')) {
    const level = Number(h.tagName[1]);
    if (level > before + 1) faults.add(`heading skips a level: ${name(h)}`);
    before = level;
  }

  for (const e of document.querySelectorAll('img'))
    if (!(e.getAttribute('alt') || '').trim()) faults.add(`no alternative text: ${name(e)}`);
  for (const e of document.querySelectorAll('svg'))
    if (!e.parentElement.closest('svg') && e.getAttribute('aria-hidden') !== 'true'
        && !(e.getAttribute('aria-label') || '').trim() && !e.querySelector('title'))
      faults.add(`no alternative text: ${name(e)}`);

  for (const t of document.querySelectorAll('svg text')) {
    const size = parseFloat(getComputedStyle(t).fontSize) * t.getScreenCTM().a;
    if (size < 9) faults.add(`letters of ${size.toFixed(1)} px in a drawing: ${t.textContent.slice(0, 30)}`);
  }

  const rgb = text => { const m = text.match(/[\d.]+/g); return m ? m.map(Number) : [0, 0, 0, 0]; };
  const luminance = c => {
    const [r, g, b] = c.slice(0, 3).map(v => { v /= 255; return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4; });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const ground = e => {
    for (; e; e = e.parentElement) {
      const c = rgb(getComputedStyle(e).backgroundColor);
      if (c.length < 4 || c[3] > 0.99) return c;
    }
    return [255, 255, 255];
  };
  const words = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (words.nextNode()) {
    const e = words.currentNode.parentElement;
    if (!words.currentNode.data.trim() || e.closest('style, script, title, desc')) continue;
    const drawn = e.closest('svg');
    const style = getComputedStyle(e);
    const a = luminance(rgb(drawn ? style.fill : style.color));
    const b = luminance(ground(drawn ? drawn.parentElement : e));
    const contrast = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    if (contrast < 4.5) faults.add(`contrast ${contrast.toFixed(2)}: ${name(e)}`);
  }
  return [...faults].slice(0, 30).join('\n');
})()
