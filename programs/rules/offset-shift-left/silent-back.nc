%
O1 (G10 changes an offset and writes it back)
G21 G90 G17 G94
G10 L2 P1 X-19. Y5. Z-60.
G54
G0 X0. Y0. Z1.
G1 X2. F100.
G10 L2 P1 X-20. Y5. Z-60.
M30
%
