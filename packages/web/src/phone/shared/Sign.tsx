/** The sign of a warning. */
export function Sign() {
  return (
    <svg className="sign" viewBox="0 0 24 24" aria-hidden="true">
      <path d="M12 2.5 22.6 21H1.4Z" />
      <path d="M12 9v6M12 17.2v1.6" />
    </svg>
  );
}
