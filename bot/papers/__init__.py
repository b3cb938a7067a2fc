"""Papers: the record of a batch as a page, a PDF, rows or plain data."""
