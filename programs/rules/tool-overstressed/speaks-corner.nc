%
O1 (an even stepover that the neck bears, into a corner that it does not)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y-0.05 Z1.
Z-0.1
G1 X1. F0.3
Y-3. F0.3
G0 Z1.
X-3. Y0.
Z-0.1
G1 X1.05 F0.7 ; expect tool-overstressed warning: half of the rupture strength && a neck 4.495 mm long or shorter, a shallower pass, or a lower feed && tool 3, 2 flutes, depth 100 µm: largest chip 0.01167 µm × chip width 0.1 mm × specific force 47910 MPa × 1.6 = force 0.08943 N (0.05589 to 0.1397); for chips below 10 µm the formula is taken × 1, typically 1.6, at most 2.5 (our choice, no source) && largest at the neck, 6 mm from the tip; strength from tools.3.material.rupture_strength
Y-3. F0.3
G0 Z1.
M5
M30
%
