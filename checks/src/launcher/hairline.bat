@echo off
rem Starts hairline with the Java that JAVA_HOME names, or else the first on the PATH.
rem More options for Java itself may stand in HAIRLINE_JAVA_OPTS.
setlocal DisableDelayedExpansion
set "HAIRLINE_LIB=%~dp0..\lib"
if not exist "%HAIRLINE_LIB%\hairline.jar" goto nojar
set "HAIRLINE_JAVA=java.exe"
if defined JAVA_HOME set "HAIRLINE_JAVA=%JAVA_HOME%\bin\java.exe"
set "HAIRLINE_VERSION="
for /f "tokens=3" %%v in ('call "%HAIRLINE_JAVA%" -version 2^>^&1 ^| findstr version') do set "HAIRLINE_VERSION=%%~v"
if not defined HAIRLINE_VERSION goto nojava
for /f "delims=.-+ tokens=1" %%m in ("%HAIRLINE_VERSION%") do set "HAIRLINE_MAJOR=%%m"
if %HAIRLINE_MAJOR% LSS 17 goto oldjava
set "HAIRLINE_ARCHIVE=-Xshare:auto"
if exist "%HAIRLINE_LIB%\hairline-%HAIRLINE_VERSION%.jsa" set HAIRLINE_ARCHIVE="-XX:SharedArchiveFile=%HAIRLINE_LIB%\hairline-%HAIRLINE_VERSION%.jsa"
"%HAIRLINE_JAVA%" -XX:+IgnoreUnrecognizedVMOptions -XX:+UseSerialGC -Xmn16m -XX:-UsePerfData -Xlog:disable "-Xlog:all=error,cds*=off:stderr" %HAIRLINE_ARCHIVE% %HAIRLINE_JAVA_OPTS% -cp "%HAIRLINE_LIB%\hairline.jar" hairline.checks.cli.Main %*
exit /b %ERRORLEVEL%

:nojar
echo hairline: "%HAIRLINE_LIB%\hairline.jar" is missing; build it with: mvn package 1>&2
exit /b 2

:nojava
echo hairline: no Java found; install Java 17 or newer, or let JAVA_HOME name it 1>&2
exit /b 2

:oldjava
echo hairline: needs Java 17 or newer, but "%HAIRLINE_JAVA%" is Java %HAIRLINE_VERSION%; let JAVA_HOME name a newer one 1>&2
exit /b 2
