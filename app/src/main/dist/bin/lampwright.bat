@echo off
rem Starts Lampwright with the Java that JAVA_HOME names, or the one on the path.
setlocal
set "lampwright_home=%~dp0.."
if defined JAVA_HOME (set "lampwright_java=%JAVA_HOME%\bin\java.exe") else (set "lampwright_java=java.exe")

rem As in the script for other systems: short commands need one compiler, and the window the module path.
set "lampwright_kind=window"
set "lampwright_compilers="
for %%c in (check explain measure models new pixels --help -h --version -V) do if "%~1"=="%%c" (
  set "lampwright_kind=commands"
  set "lampwright_compilers=-XX:TieredStopAtLevel=1"
)
for %%c in (export picture prove rehearse sheet) do if "%~1"=="%%c" set "lampwright_kind=commands"
if "%lampwright_kind%"=="commands" (
  set lampwright_program=-cp "%lampwright_home%\lib\*" lampwright.app.Main
) else (
  set lampwright_program=--module-path "%lampwright_home%\lib" --module lampwright.app/lampwright.app.Main
)

rem The archive of loaded classes that a run before this one has made. None where LAMPWRIGHT_CACHE is "none".
if not defined LAMPWRIGHT_CACHE set "LAMPWRIGHT_CACHE=%LOCALAPPDATA%"
set lampwright_archive=
if not defined LAMPWRIGHT_CACHE goto start
if "%LAMPWRIGHT_CACHE%"=="none" goto start
set "lampwright_name=%~dp0%lampwright_kind%"
set "lampwright_name=%lampwright_name::=%"
set "lampwright_base=%LAMPWRIGHT_CACHE%\Lampwright\start\%lampwright_name:\=-%"
set lampwright_archive=-Xlog:disable "-Dlampwright.archive=%lampwright_base%"
if exist "%lampwright_base%.aot" (
  set lampwright_archive=%lampwright_archive% -XX:+IgnoreUnrecognizedVMOptions "-XX:AOTCache=%lampwright_base%.aot"
  goto start
)
if exist "%lampwright_base%.jsa" (
  set lampwright_archive=%lampwright_archive% "-XX:SharedArchiveFile=%lampwright_base%.jsa"
  goto start
)
if not "%lampwright_kind%"=="window" goto start
if not exist "%LAMPWRIGHT_CACHE%\Lampwright\start" goto start
set "lampwright_classes=%lampwright_base%.%RANDOM%.classes"
set lampwright_archive=%lampwright_archive% "-XX:DumpLoadedClassList=%lampwright_classes%" "-Dlampwright.classes=%lampwright_classes%"

:start
"%lampwright_java%" -XX:+UseSerialGC %lampwright_compilers% %lampwright_archive% %LAMPWRIGHT_JAVA_OPTIONS% %lampwright_program% %*
exit /b %errorlevel%
