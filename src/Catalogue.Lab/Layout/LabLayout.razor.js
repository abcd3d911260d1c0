export function prefersDark() {
  return matchMedia("(prefers-color-scheme: dark)").matches;
}

// A year; the public pages read the same cookie.
export function setTheme(cookie, theme) {
  document.cookie = `${cookie}=${theme}; path=/; max-age=31536000; samesite=lax`;
  location.reload();
}
