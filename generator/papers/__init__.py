"""From the same content and plan to papers that are printed: cards, boards, sheets, labels and tags."""
