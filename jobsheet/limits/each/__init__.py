"""One limit a file: demand, capacity, verdict; no limit knows another."""
