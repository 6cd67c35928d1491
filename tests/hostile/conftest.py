import gc

import shell

assert shell
gc.enable()  # the command line turned it off when it was loaded
