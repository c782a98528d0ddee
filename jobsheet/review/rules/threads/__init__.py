"""Rules about tapping."""
