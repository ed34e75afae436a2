// Says before anything is drawn whether passkeys can be had here, so that nothing moves when the rest of the page has loaded.

// A passkey belongs to a name: browsers keep none for an address of numbers.
const isNumber = /^[\d.]+$|^\[/.test(location.hostname);
if (!isNumber && "PublicKeyCredential" in window && "parseRequestOptionsFromJSON" in PublicKeyCredential) {
  document.documentElement.dataset.passkeys = "offered";
}
