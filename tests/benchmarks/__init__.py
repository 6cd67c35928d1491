"""Benchmarks: ratios against a baseline of the same run. `python -m tests.benchmarks` prints them."""
