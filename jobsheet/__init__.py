"""Job sheets for manual milling machines."""
