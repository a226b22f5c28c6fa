/**
 * Loaded before an app by `electron -r`: says on standard output when its first window has loaded, and when a key that was
 * pressed over the drawn rows of the floor stands in the search.
 */
const { app } = require('electron');

const drawn = `new Promise((done) => {
  const look = () => {
    if (document.querySelector('[data-machine-row]') === null) return false;
    requestAnimationFrame(() => setTimeout(done));
    return true;
  };
  if (look()) return;
  const seen = new MutationObserver(() => { if (look()) seen.disconnect(); });
  seen.observe(document, { childList: true, subtree: true });
})`;

const typed = `new Promise((done) => {
  document.addEventListener('input', (event) => { if (event.target.value === 'x') done(); });
  globalThis.isListening = true;
})`;

app.once('web-contents-created', (_, contents) => {
  contents.once('did-finish-load', () => console.log(`loaded ${Date.now()}`));
  if (!process.argv.includes('--data')) return;
  contents.once('dom-ready', async () => {
    const taken = contents.executeJavaScript(typed);
    await contents.executeJavaScript(drawn);
    console.log(`drawn ${Date.now()}`);
    contents.sendInputEvent({ type: 'keyDown', keyCode: 'x' });
    contents.sendInputEvent({ type: 'char', keyCode: 'x' });
    contents.sendInputEvent({ type: 'keyUp', keyCode: 'x' });
    await taken;
    console.log(`usable ${Date.now()}`);
  });
});
