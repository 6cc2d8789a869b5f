%
O1 (just too heavy a cut for the neck)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.1
G1 X3. F0.9 ; expect tool-overstressed error: half of the rupture strength && a neck 3.732 mm long or shorter, a shallower pass, or a lower feed && tool 3, 2 flutes, depth 100 µm: largest chip 0.015 µm × chip width 0.1 mm × specific force 44990 MPa × 1.6 = force 0.108 N (0.06749 to 0.1687); for chips below 10 µm the formula is taken × 1, typically 1.6, at most 2.5 (our choice, no source) && largest at the neck, 6 mm from the tip; strength from tools.3.material.rupture_strength
G0 Z1.
M5
M30
%
