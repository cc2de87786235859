"""Pages, one file a place. Views read a request, ask the notebook or the rooms below, and fill a template."""
