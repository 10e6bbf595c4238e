/** Away from localhost and https a browser gives no means to make pseudonyms: the command line does the same where the file is. */
export function NotAble() {
  return (
    <>
      <h1>No file can be brought in from this address.</h1>
      <p className="answer">
        Names and numbers are taken out here, in the browser, before anything is sent. A browser gives the means for that only to pages of
        its own machine or with a secured address (https), and this page came without either.
      </p>
      <p>
        Open Lengthbook on the machine on which it runs, at the address that it printed when it started, or bring the file in there by the
        command line, which strips it in the same way:
      </p>
      <p>
        <code>npm run -s lengthbook -- intake FILE --passphrase-file FILE</code>
      </p>
      <p>Nothing was read and nothing was sent.</p>
    </>
  );
}
