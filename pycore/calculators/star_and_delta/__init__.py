"""Line and phase values in star and in delta."""
