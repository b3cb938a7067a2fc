"""What is safe, by rule, with the arithmetic shown. Every other room asks here."""
