"""Salt and feed arithmetic for orchids in pots of airy mineral media."""
