// Questions to the server. A newer question of one line, by itself its kind, cancels the older one.

const running = new Map();

/** Posts a question; null where a newer one has taken its place. */
export async function ask(kind, question, line = kind) {
  running.get(line)?.abort();
  const abort = new AbortController();
  running.set(line, abort);
  try {
    const response = await fetch("/api/" + kind, {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify(question),
      signal: abort.signal,
    });
    if (!response.ok) return { failed: (await response.text()) || "The program behind this page could not answer." };
    return await response.json();
  } catch (error) {
    if (error.name === "AbortError") return null;
    return { failed: "The program behind this page does not answer: is it still running?" };
  } finally {
    if (running.get(line) === abort) running.delete(line);
  }
}
