// Handing an answer on: the device's own share sheet where there is one, else the clipboard.

/** Share a link; says what happened. */
export async function shareLink(title, url) {
  try {
    if (navigator.share) {
      await navigator.share({ title, url });
      return "";
    }
    await navigator.clipboard.writeText(url);
    return "The link is copied. It opens with these numbers filled in.";
  } catch (failure) {
    if (failure.name === "AbortError") return "";
    return `Copy this link: ${url}`;
  }
}
