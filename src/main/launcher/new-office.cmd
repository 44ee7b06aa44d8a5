@echo off
rem For a double-click on Windows: makes the office folder "Paperbark office" beside your documents, and shows it.
setlocal EnableExtensions DisableDelayedExpansion
set "OFFICE=%USERPROFILE%\Paperbark office"
call "%~dp0paperbark.cmd" setup "%OFFICE%"
set "ENDED=%ERRORLEVEL%"
if "%ENDED%"=="0" start "" "%OFFICE%"
pause
exit /b %ENDED%
