@echo off
rem Starts Paperbark on Windows, from wherever it is called.
rem
rem Java 17 or newer is taken from the folder "runtime" beside this file, from JAVA_HOME or from the path.
rem What PAPERBARK_JAVA_OPTIONS holds is passed to Java, such as -Xmx4g.
setlocal EnableExtensions DisableDelayedExpansion
set "HERE=%~dp0"
set "JAVA="
set "FOUND=No Java was found."
if exist "%HERE%runtime\bin\java.exe" (
    set "JAVA=%HERE%runtime\bin\java.exe"
    goto start
)
if defined JAVA_HOME call :consider "%JAVA_HOME%\bin\java.exe"
for %%i in (java.exe) do call :consider "%%~$PATH:i"
if defined JAVA goto start
echo Paperbark needs Java 17 or newer. %FOUND%>&2
echo Install Java 17 or newer, or let JAVA_HOME name the folder that it is in; then start this again.>&2
exit /b 23

:start
rem Optimising code, or making code of its own for what is called by name, costs more processor time than it gives back.
set "EFFORT=-XX:TieredStopAtLevel=1 -XX:+UseSerialGC -Dsun.reflect.inflationThreshold=2147483647"
rem The archive is taken as it is, not moved to another address first; a Java that knows no such choice starts all the same.
set "EFFORT=%EFFORT% -XX:+IgnoreUnrecognizedVMOptions -XX:+UnlockDiagnosticVMOptions -XX:ArchiveRelocationMode=0"
rem Packs that are being made are copied less often where there is room for more of them. Whoever names options decides on memory too, and
rem what lives for weeks takes no more than it needs.
if defined PAPERBARK_JAVA_OPTIONS goto run
if /i not "%~1"=="watch" set "EFFORT=%EFFORT% -Xms384m -Xmn200m"

:run
"%JAVA%" %EFFORT% "-XX:SharedArchiveFile=%HERE%lib\paperbark.jsa" -Xshare:auto -Xlog:disable -Xlog:all=error:stderr "-Dpaperbark.home=%HERE%." "-Dpaperbark.launcher=%HERE%paperbark.cmd" %PAPERBARK_JAVA_OPTIONS% -jar "%HERE%lib\paperbark.jar" %*
exit /b %ERRORLEVEL%

:consider
rem The version stands in the file "release" beside a Java, which is quicker than to ask it.
if defined JAVA exit /b
if "%~1"=="" exit /b
if not exist "%~1" exit /b
set "VERSION="
if exist "%~dp1..\release" for /f "usebackq tokens=1,2 delims==" %%a in ("%~dp1..\release") do if "%%a"=="JAVA_VERSION" set "VERSION=%%~b"
if not defined VERSION for /f "tokens=3" %%v in ('""%~1" -version 2^>^&1"') do if not defined VERSION set "VERSION=%%~v"
if not defined VERSION exit /b
for /f "delims=.-+_" %%m in ("%VERSION%") do set "MAJOR=%%m"
if %MAJOR% GEQ 17 (
    set "JAVA=%~1"
) else (
    set "FOUND=Java %VERSION% is too old."
)
exit /b
