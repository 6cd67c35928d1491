"""Words and how they are written, before any rule book is known: tokens, forms, what is like what."""
