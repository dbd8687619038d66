"""How wide the letters of good type are, and how much white stands beside them, by style."""
