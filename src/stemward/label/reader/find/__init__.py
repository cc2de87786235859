"""What looks for facts in a sentence, a file a matter. A finder takes what is said and yields hits."""
