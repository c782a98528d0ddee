"""The rules, one a file, in a folder by what they are about; no rule knows another."""
