"""What a page must be like on a small phone, looked at in the browser."""

LOOK = r"""
const jars = [];
const where = e => (e.id ? '#' + e.id : e.tagName.toLowerCase() + (e.className && e.className.baseVal === undefined ? '.' + e.className : ''))
  + ' “' + (e.innerText || e.value || '').trim().slice(0, 40).replace(/\s+/g, ' ') + '”';
const seen = e => { const r = e.getBoundingClientRect(); return r.width > 1 && r.height > 1 && e.checkVisibility({visibilityProperty: true}); };
const wide = document.scrollingElement.scrollWidth;
if (wide > window.innerWidth || window.innerWidth > 360) jars.push('scrolls sideways: ' + wide + ' px');
for (const e of document.querySelectorAll('main *')) {
  if (e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0 && ['auto', 'scroll'].includes(getComputedStyle(e).overflowX)
      && !e.matches('[tabindex], textarea, input')) jars.push('scrolls, but not by keyboard: ' + where(e));
}
for (const e of document.querySelectorAll('input:not([type=hidden]), select, textarea')) {
  const named = (e.labels && [...e.labels].some(l => l.innerText.trim() || l.textContent.trim())) || e.getAttribute('aria-label') || e.getAttribute('aria-labelledby');
  if (!named) jars.push('has no label: ' + (e.name || where(e)).replace(/^\d{4}-\d\d-\d\d/, 'DAY'));
}
let level = 0;
const headings = [...document.querySelectorAll('h1, h2, h3, h4, h5, h6')].filter(e => e.checkVisibility());
for (const e of headings) {
  const own = Number(e.tagName[1]);
  if (own > level + 1) jars.push('skips a level of headings: ' + where(e));
  level = own;
}
if (headings.filter(e => e.tagName === 'H1').length !== 1) jars.push('has not one h1');
const ids = [...document.querySelectorAll('[id]')].map(e => e.id);
for (const id of new Set(ids)) if (ids.filter(one => one === id).length > 1) jars.push('two elements are called ' + id);
for (const e of document.querySelectorAll('a[href], button, input:not([type=hidden]), select, textarea, summary')) {
  if (!seen(e) || e.closest('.hidden, .skip')) continue;
  const label = e.matches('[type=radio], [type=checkbox]') && e.closest('label');
  const r = (label || e).getBoundingClientRect();
  const main = e.matches('button, .button, .tick-box, input:not([type=radio], [type=checkbox]), select, textarea, summary');
  const least = main ? 44 : 24;
  const inSentence = e.tagName === 'A' && getComputedStyle(e).display === 'inline' && e.parentElement.innerText.trim() !== e.innerText.trim();
  if (!inSentence && (r.height < least || r.width < 24)) jars.push('is ' + Math.round(r.width) + ' by ' + Math.round(r.height) + ' px: ' + where(e));
}
return [...new Set(jars)];
"""


def look_at(browser):
    """What jars on the page that is shown, a line each."""
    return browser.driver.execute_script(LOOK) + [f"complains: {line}" for line in browser.complaints()]
