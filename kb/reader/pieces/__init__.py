"""A text cut into pieces, each a name, a fact or a phrase, and values put together from them."""
