// Parts of the engine from the site.

export async function fetched(address) {
  const reply = await fetch(address);
  if (!reply.ok) throw new Error(`${reply.status} ${address}`);
  return reply;
}

export async function compiled(address) {
  const reply = await fetched(address);
  const spare = reply.clone(); // for hosts and browsers that cannot stream it
  try {
    return await WebAssembly.compileStreaming(reply);
  } catch {
    return WebAssembly.compile(await spare.arrayBuffer());
  }
}

export const science = async (address) => (await fetched(address)).json();
