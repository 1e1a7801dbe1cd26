"""Build time: what is made from the declarations, and the one Markdown extension."""
