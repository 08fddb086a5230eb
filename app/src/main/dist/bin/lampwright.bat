@echo off
rem Starts Lampwright with the Java that JAVA_HOME names, or the one on the path.
setlocal
set "lampwright_home=%~dp0.."
if defined JAVA_HOME (set "lampwright_java=%JAVA_HOME%\bin\java.exe") else (set "lampwright_java=java.exe")
"%lampwright_java%" -XX:+UseSerialGC -Xshare:auto %LAMPWRIGHT_JAVA_OPTIONS% --module-path "%lampwright_home%\lib" --module lampwright.app/lampwright.app.Main %*
exit /b %errorlevel%
