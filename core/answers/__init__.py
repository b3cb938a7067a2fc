"""A question in, an answer out: number, band, sources, cautions."""
