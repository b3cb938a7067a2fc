"""Fire, heat and water: how warm the meat is and when it will be done."""
