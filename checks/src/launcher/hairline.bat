@echo off
rem Starts hairline with the Java that JAVA_HOME names, or else the first on the PATH.
rem More options for Java itself may stand in HAIRLINE_JAVA_OPTS.
setlocal DisableDelayedExpansion
set "HAIRLINE_LIB=%~dp0..\lib"
if not exist "%HAIRLINE_LIB%\hairline.jar" goto nojar
set "HAIRLINE_JAVA=java.exe"
if defined JAVA_HOME set "HAIRLINE_JAVA=%JAVA_HOME%\bin\java.exe"
if defined JAVA_HOME if not exist "%HAIRLINE_JAVA%" goto badhome
set "HAIRLINE_VERSION="
for /f "tokens=3" %%v in ('call "%HAIRLINE_JAVA%" -version 2^>^&1 ^| findstr version') do set "HAIRLINE_VERSION=%%~v"
if not defined HAIRLINE_VERSION goto nojava
for /f "delims=.-+ tokens=1" %%m in ("%HAIRLINE_VERSION%") do set "HAIRLINE_MAJOR=%%m"
if %HAIRLINE_MAJOR% LSS 17 goto oldjava
set "HAIRLINE_ARCHIVE=-Xshare:auto"
if exist "%HAIRLINE_LIB%\hairline-%HAIRLINE_VERSION%.jsa" set HAIRLINE_ARCHIVE="-XX:SharedArchiveFile=%HAIRLINE_LIB%\hairline-%HAIRLINE_VERSION%.jsa"
if exist "%HAIRLINE_LIB%\hairline-%HAIRLINE_VERSION%.aot" set HAIRLINE_ARCHIVE="-XX:AOTCache=%HAIRLINE_LIB%\hairline-%HAIRLINE_VERSION%.aot"
rem One short program is checked before the better of Java's two compilers has earned its own time; ten times 16 MB.
set "HAIRLINE_COMPILER=-XX:+TieredCompilation -XX:InlineSmallCode=500 -XX:FreqInlineSize=120 -Xmn48m"
set "HAIRLINE_QUICK=-XX:TieredStopAtLevel=1 -XX:Tier3InvocationThreshold=400 -XX:Tier3MinInvocationThreshold=200"
set "HAIRLINE_QUICK=%HAIRLINE_QUICK% -XX:Tier3CompileThreshold=4000 -XX:Tier3BackEdgeThreshold=10000 -XX:SurvivorRatio=20"
if "%~3"=="" if not "%~z2"=="" if not exist "%~2\*" if %~z20 LEQ 167772160 set "HAIRLINE_COMPILER=%HAIRLINE_QUICK%"
set "HAIRLINE_CLASSES=%HAIRLINE_LIB%\hairline.jar"
set "HAIRLINE_LOG=-Xlog:all=error,cds*=off:stderr"
if %HAIRLINE_MAJOR% GEQ 25 set "HAIRLINE_LOG=-Xlog:all=error,cds*=off,aot*=off:stderr"
set "HAIRLINE_COLLECTOR=-XX:+UseSerialGC -Xmn16m"
if /i not "%~1"=="view" goto start
set "HAIRLINE_ARCHIVE=-Xshare:auto"
set "HAIRLINE_COMPILER=-XX:+TieredCompilation"
set "HAIRLINE_COLLECTOR=-XX:+UseG1GC"
if %HAIRLINE_MAJOR% GEQ 24 set "HAIRLINE_COLLECTOR=-XX:+UseG1GC --enable-native-access=ALL-UNNAMED --sun-misc-unsafe-memory-access=allow"
if exist "%HAIRLINE_LIB%\hairline-viewer.jar" set "HAIRLINE_CLASSES=%HAIRLINE_CLASSES%;%HAIRLINE_LIB%\hairline-viewer.jar"
:start
"%HAIRLINE_JAVA%" -XX:+IgnoreUnrecognizedVMOptions %HAIRLINE_COLLECTOR% %HAIRLINE_COMPILER% -XX:-UsePerfData -Xlog:disable "%HAIRLINE_LOG%" -XX:+UnlockDiagnosticVMOptions -XX:ArchiveRelocationMode=0 %HAIRLINE_ARCHIVE% %HAIRLINE_JAVA_OPTS% -cp "%HAIRLINE_CLASSES%" hairline.checks.cli.Main %*
exit /b %ERRORLEVEL%

:nojar
echo hairline: "%HAIRLINE_LIB%\hairline.jar" is missing; build it with: mvn package 1>&2
exit /b 2

:badhome
echo hairline: JAVA_HOME is "%JAVA_HOME%", but there is no bin\java.exe in it; let it name a Java 17 or newer 1>&2
exit /b 2

:nojava
echo hairline: no Java found; install Java 17 or newer, or let JAVA_HOME name it 1>&2
exit /b 2

:oldjava
echo hairline: needs Java 17 or newer, but "%HAIRLINE_JAVA%" is Java %HAIRLINE_VERSION%; let JAVA_HOME name a newer one 1>&2
exit /b 2
