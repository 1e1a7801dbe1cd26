// Inlined behind the link of a short address: leads on at once, and takes the fragment along.

location.replace(document.querySelector(".salt-lead").href + location.hash);
