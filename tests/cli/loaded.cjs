/** Put before a program by `node -r`: names the files that it has loaded when it ends. */
process.on('exit', () => {
  for (const file of Object.keys(require.cache)) process.stderr.write(`${file}\n`);
});
