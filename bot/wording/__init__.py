"""Every sentence that a person reads, one file a subject."""
