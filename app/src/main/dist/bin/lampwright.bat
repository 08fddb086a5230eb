@echo off
rem Starts Lampwright with its own Java where it was installed with one, else with the Java that
rem JAVA_HOME names, or the one on the path.
setlocal
set "lampwright_home=%~dp0.."
set "lampwright_jars=%lampwright_home%\lib"
if defined JAVA_HOME (set "lampwright_java=%JAVA_HOME%\bin\java.exe") else (set "lampwright_java=java.exe")
rem An installed program has its Java and its jars in other places than the program folder.
if exist "%lampwright_home%\runtime\bin\java.exe" (
  set "lampwright_java=%lampwright_home%\runtime\bin\java.exe"
  set "lampwright_jars=%lampwright_home%\app"
)
if not exist "%lampwright_java%" where /q "%lampwright_java%" || (
  echo lampwright: needs Java 17 or later: set JAVA_HOME or put java on the path>&2
  exit /b 3
)

rem As in the script for other systems: short commands need one compiler, and the window the module path.
set "lampwright_kind=window"
set "lampwright_compilers="
for %%c in (check explain measure models new pixels --help -h --version -V) do if "%~1"=="%%c" (
  set "lampwright_kind=short"
  set "lampwright_compilers=-XX:TieredStopAtLevel=1"
)
for %%c in (export live picture prove rehearse sheet) do if "%~1"=="%%c" set "lampwright_kind=commands"
if "%lampwright_kind%"=="window" set "lampwright_compilers=-XX:Tier4InvocationThreshold=50000 -XX:Tier4MinInvocationThreshold=5000 -XX:Tier4CompileThreshold=150000 -XX:Tier4BackEdgeThreshold=400000"
rem Java looks into the jars of a class path in turn, and opens each on the way: those with our tables first.
set "lampwright_path="
for %%j in ("%lampwright_jars%\lampwright-engine-*.jar" "%lampwright_jars%\lampwright-exporters-*.jar" "%lampwright_jars%\lampwright-app-*.jar") do call set "lampwright_path=%%lampwright_path%%%%j;"
set "lampwright_path=%lampwright_path%%lampwright_jars%\*"
if not "%lampwright_kind%"=="window" (
  set lampwright_program=-cp "%lampwright_path%" lampwright.app.Main
  if "%~1"=="live" set lampwright_program=--enable-native-access=ALL-UNNAMED -cp "%lampwright_path%" lampwright.app.Main
) else (
  rem What newer versions of Java remark on, and JavaFX and serial ports do.
  set lampwright_program=--enable-native-access=javafx.graphics,com.fazecast.jSerialComm -Dsun.misc.unsafe.memory.access=allow --module-path "%lampwright_jars%" --module lampwright.app/lampwright.app.Main
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
if not exist "%LAMPWRIGHT_CACHE%\Lampwright\start" mkdir "%LAMPWRIGHT_CACHE%\Lampwright\start" 2>nul
if not exist "%LAMPWRIGHT_CACHE%\Lampwright\start" goto start
set "lampwright_classes=%lampwright_base%.%RANDOM%.classes"
set lampwright_archive=%lampwright_archive% "-XX:DumpLoadedClassList=%lampwright_classes%" "-Dlampwright.classes=%lampwright_classes%"

:start
"%lampwright_java%" -XX:+UseSerialGC -Djdk.reflect.useNativeAccessorOnly=true %lampwright_compilers% %lampwright_archive% %LAMPWRIGHT_JAVA_OPTIONS% %lampwright_program% %*
exit /b %errorlevel%
