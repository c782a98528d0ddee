"""What a machine will carry, learned from its trials. Begin with `capability_window.py`."""
