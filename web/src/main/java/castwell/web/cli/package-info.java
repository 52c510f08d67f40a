/** Is the command line, one command a file. Bad input gets one sentence and exit code 2. */
package castwell.web.cli;
