"""One batch: the list of what happened, folded into what is known."""
