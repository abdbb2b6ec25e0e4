window-title = pinhole
