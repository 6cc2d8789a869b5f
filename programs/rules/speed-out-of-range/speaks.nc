%
O1 (one revolution a minute too fast, and one too slow)
G21 G90 G17 G94
G54
S60001 M3 ; expect speed-out-of-range error: S60001 asks for 60001 rpm, highest speed 60000 rpm && S60000, or another spindle
S3999 ; expect speed-out-of-range error: S3999 asks for 3999 rpm, lowest speed 4000 rpm && S4000, or another spindle
M5
M30
%
