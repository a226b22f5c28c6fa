/** Loaded before an app by `electron -r`: says on standard output when its first window has loaded. */
const { app } = require('electron');

app.once('web-contents-created', (_, contents) => {
  contents.once('did-finish-load', () => console.log(`loaded ${Date.now()}`));
});
