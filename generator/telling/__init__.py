"""What pages and papers both say: the words, the numbers and the order of one edition."""
