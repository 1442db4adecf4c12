"""What is shown: finished views become pages, files and search entries."""
