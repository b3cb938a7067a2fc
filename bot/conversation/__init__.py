"""One turn of the talk: from what was said, through the services, to what is answered."""
