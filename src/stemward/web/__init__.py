"""The notebook in the browser: pages, the server on this computer, and what keeps strangers out."""
